import { bitName, bitSize, type Job, SETTINGS, type SettingKey, usualInput } from '@pourproof/job';
import { inchesFromMm, type LengthUnit, parseLengthMm } from '@pourproof/plane';
import { speedText } from './amounts.ts';

/** A setting that was not given, with the value that holds instead. */
export interface UsualValue {
  readonly key: SettingKey;
  /** The value with its unit: `0.5 mm`, `0°`, `maple`. */
  readonly value: string;
}

/** What was taken as usual in a job and weighs on its proof: without a seal, the wait after it does not. */
export function usualValues(job: Job): readonly UsualValue[] {
  return valuesOf(job.defaults, job);
}

/** What was taken from the maker's shop, and weighs on the proof. */
export function shopValues(job: Job): readonly UsualValue[] {
  return valuesOf(job.fromShop, job);
}

function valuesOf(keys: readonly SettingKey[], job: Job): readonly UsualValue[] {
  const isSealed = job.seal !== 'none' && job.coats > 0;
  return keys
    .filter((key) => isSealed || SETTINGS[key].only?.isSealed !== true)
    .map((key) => ({ key, value: settledText(key, job) }));
}

function settledText(key: SettingKey, job: Job): string {
  const { field, holds } = SETTINGS[key];
  if (key === 'bit') {
    return job.bits.map((bit) => bitName(bit, job.units)).join(', then ');
  }
  // every setting that may be taken fills a field of the job itself or of its machine
  const value: unknown = { ...job, ...job.machine }[field as keyof Job];
  switch (holds.quantity) {
    case 'length':
      return holds.hasWorkLengths === true
        ? bitSize(Number(value), job.units)
        : fineText(String(usualInput(key, {})), job.units);
    case 'angle':
      return `${short(value)}°`;
    case 'time':
      return `${short(value)} h`;
    case 'temperature':
      return `${short(value)} °C`;
    case 'speed':
      return speedText(Number(value), job.units);
    default:
      return plainText(value, holds.percent === 'itself');
  }
}

/** A length finer than work is done to, as it is usually typed. */
function fineText(usual: string, unit: LengthUnit): string {
  return unit === 'mm'
    ? usual.replace(/(?<=\d)(?=[a-z])/u, ' ')
    : `${Number(inchesFromMm(parseLengthMm(usual)).toPrecision(2))} in`;
}

function plainText(value: unknown, isPercent: boolean): string {
  if (typeof value === 'boolean') {
    return value ? 'yes' : 'no';
  }
  return isPercent ? `${short(value)} %` : String(value);
}

function short(value: unknown): number {
  return Number(Number(value).toFixed(2));
}
