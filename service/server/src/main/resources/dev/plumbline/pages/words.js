// SPDX-License-Identifier: Apache-2.0
// Numbers and code words of the answers as a person reads them.

/** A code word such as tipNotConfirmed in words. */
export const spelledOut = (word) => word.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** A limit of a plan in words; of a structure its name as it was given, as in "hazard:NAME". */
export function limitWords(limit) {
  const [, kind, name] = /^(nerve|hazard):(.*)$/.exec(limit) ?? [];
  return kind ? `${kind} "${name}"` : spelledOut(limit);
}

/** A number to a tenth, never a negative zero. */
export function tenth(value) {
  const text = value.toFixed(1);
  return text === '-0.0' ? '0.0' : text;
}

/** A quantity with its expanded uncertainty, or why there is none. */
export function quantity(given, unit = '', signed = false) {
  if (!given) return '';
  if (given.value === null) return spelledOut(given.reason);
  const sign = signed && Number(given.value.toFixed(1)) > 0 ? '+' : '';
  return `${sign}${tenth(given.value)} ± ${given.expandedUncertainty.toFixed(1)}${unit}`;
}

/** What a difference means; words, since a colour would not do. */
export function judged(difference) {
  if (!difference || difference.value === null) return '';
  return difference.exceedsUncertainty
    ? "more than the measurement's uncertainty"
    : 'no difference that this measurement could show';
}

/** A needle of the site's list. */
export function needleWords(needle) {
  return [`${needle.lengthMm} mm`, `${needle.gauge} G`, spelledOut(needle.tipType), needle.echogenic ? 'echogenic' : '']
    .filter(Boolean)
    .join(', ');
}

/** A list in words. */
export const listed = (words) => words.map(spelledOut).join(', ');

export const clock = (date = new Date()) => date.toLocaleTimeString('en-GB');
