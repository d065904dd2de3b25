/** The reversed polynomial of CRC-32 (ISO/IEC 13239; from memory). */
const POLYNOMIAL = 0xedb88320;

/** CRC-32 of a text by its UTF-16 units, the low byte first, as eight digits: tells whether two papers are of one job, and no more than that. */
export function checksum(text: string): string {
  let crc = 0xffffffff;
  for (let i = 0; i < text.length; i++) {
    crc ^= text.charCodeAt(i);
    for (let k = 0; k < 16; k++) {
      crc = (crc >>> 1) ^ (crc & 1 ? POLYNOMIAL : 0);
    }
  }
  return (~crc >>> 0).toString(16).padStart(8, '0');
}
