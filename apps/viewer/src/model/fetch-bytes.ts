const fetched = new Map<string, Promise<Uint8Array>>();

/** The bytes of a file that ships with the page, the same ones each time. */
export async function fetchBytes(url: string): Promise<Uint8Array> {
  const known = fetched.get(url) ?? bytesFrom(url);
  fetched.set(url, known);
  try {
    return await known;
  } catch (error) {
    // the next one that asks may have a connection
    fetched.delete(url);
    throw error;
  }
}

async function bytesFrom(url: string): Promise<Uint8Array> {
  const response = await fetch(url);
  if (!response.ok) {
    throw new Error(`${url} answered ${response.status}`);
  }
  return new Uint8Array(await response.arrayBuffer());
}
