const vulgar: Readonly<Record<string, string>> = {
  '½': '1/2', '⅓': '1/3', '⅔': '2/3', '¼': '1/4', '¾': '3/4', '⅕': '1/5', '⅖': '2/5', '⅗': '3/5', '⅘': '4/5',
  '⅙': '1/6', '⅚': '5/6', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8',
}

/** Written text with its many dashes, primes, spaces and fraction characters brought to plain ASCII (and °), ends trimmed. */
export const plainText = (text: string): string => text
  .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]/g, fraction => ` ${vulgar[fraction] ?? fraction}`)
  .replace(/[\s\u00a0\u2000-\u200b\u202f\u205f\u2060\u3000\ufeff]+/g, ' ')
  .replace(/[‐‑‒–—―−﹣－]/g, '-')
  .replace(/[′’‘ʹ`´]/g, '\'')
  .replace(/[″”“ʺ]|''/g, '"')
  .replace(/[º˚]/g, '°')
  .replace(/[⁄∕]/g, '/')
  .replace(/²/g, '2').replace(/³/g, '3').replace(/[µμ]/g, 'u')
  .replace(/℃/g, '°C').replace(/℉/g, '°F')
  .trim()
