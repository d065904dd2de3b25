import { formatLength } from '@pourproof/plane';
import type { Finding, FindingCode, Fix } from '@pourproof/proof';
import type { Reader } from './finding-words.ts';
import { anyFixText, findingTitle, fixText } from './words-of-finding.ts';

/**
 * A way out with all that its trial told: what else it takes, what it leaves and what it brings.
 *
 * @param amount the measured value of the finding as it is printed
 */
export function triedText(
  finding: Finding,
  fix: Fix,
  reader: Reader,
  amount: (value: number) => string,
): string {
  const { also = [], couponRows = [], leaves, brings = [] } = fix;
  return [
    fixText(finding, fix, reader),
    ...(fix.do === 'use-bit' && fix.edgeMm !== undefined
      ? [
          `Its cutting edge has to be ${formatLength(fix.edgeMm, reader.units)} long, which is more than usual.`,
        ]
      : []),
    ...(fix.do === 'use-bit' && fix.isToBuy === true
      ? ['By the list of your shop it is still to be bought.']
      : []),
    ...also.map((step) => `It also takes this: ${anyFixText(step, reader)}`),
    ...(couponRows.length === 0 ? [] : [couponText(couponRows)]),
    ...(leaves === undefined ? [] : [`That leaves ${amount(leaves.value)}, a ${leaves.severity}.`]),
    ...(brings.length === 0 ? [] : [`In turn it brings ${broughtText(finding, brings)}.`]),
  ].join(' ');
}

/** What binds where no way out holds: each that was tried, and why it does not. */
export function droppedTexts(
  { fix: { options, dropped = [] }, ...finding }: Finding,
  reader: Reader,
): readonly string[] {
  return options.length > 0
    ? []
    : dropped.map(({ fix, brings }) => {
        const why = brings.length === 0 ? 'it is not enough' : `it brings ${broughtText(finding, brings)}`;
        return `Tried, but ${why}: ${fixText(finding, fix, reader)}`;
      });
}

/** What was not tried, since a drawing takes long to prove: each way out where there is no other, or else how many there are. */
export function untriedTexts(
  { fix: { options, untried = [] }, ...finding }: Finding,
  reader: Reader,
): readonly string[] {
  if (untried.length === 0) {
    return [];
  }
  const [count, were] =
    untried.length === 1 ? ['One more way', 'was'] : [`${untried.length} more ways`, 'were'];
  return options.length > 0
    ? [`${count} out ${were} not tried: a drawing of this size allows few trials.`]
    : untried.map(
        (fix) =>
          `Not tried, as a drawing of this size allows few trials, so that it may bring worse: ${fixText(finding, fix, reader)}`,
      );
}

/** What has to be done to coupons that took from the job what now changes. */
function couponText(rows: readonly number[]): string {
  const [what, they] = rows.length === 1 ? ['row', 'it was'] : ['rows', 'they were'];
  return `Before that, write into ${what} ${rows.join(', ')} of the coupons what the job says now, for ${they} cut with it.`;
}

/** What a way out brings; a finding that is there already comes at further places. */
function broughtText({ code }: Pick<Finding, 'code'>, brings: readonly FindingCode[]): string {
  const others = brings.filter((each) => each !== code);
  return [
    ...(others.length < brings.length ? ['the same at other places'] : []),
    ...(others.length > 0 ? [titles(others)] : []),
  ].join(' and ');
}

function titles(codes: readonly FindingCode[]): string {
  return codes.map((code) => `“${findingTitle(code)}”`).join(', ');
}
