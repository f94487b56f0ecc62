const nbsp = '\u00a0'

/** A number to so many significant figures, never in powers of ten, thousands parted by commas, with a true minus sign. */
export function figures(value: number, significant = 3): string {
  if (!Number.isFinite(value)) return 'not known'
  if (value === 0) return '0'
  const before = Math.floor(Math.log10(Math.abs(value))) + 1
  const decimals = Math.max(0, significant - before)
  const rounded = decimals > 0 ? value : Number(value.toPrecision(significant))
  return decimal(rounded, Math.min(decimals, 8))
}

/** A number as one would write it by hand: up to four significant figures, no zeros at its end. */
export const plain = (value: number): string => figures(value, 4).replace(/(\.\d*?)0+$/, '$1').replace(/\.$/, '')

/** A number rounded to a step such as 10, 1 or 0.01, and no finer. */
export const toStep = (value: number, step: number): string =>
  decimal(Math.round(value / step) * step, Math.min(8, Math.max(0, -Math.floor(Math.log10(step) + 1e-9))))

/** A number with so many decimals. */
export function decimal(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals)
  const [whole, rest] = text.split('.') as [string, string?]
  const grouped = whole.length > 3 ? whole.replace(/\B(?=(\d{3})+$)/g, ',') : whole
  const sign = value < 0 && Number(text) !== 0 ? '\u2212' : ''
  return `${sign}${grouped}${rest === undefined ? '' : `.${rest}`}`
}

const written: Readonly<Record<string, string>> = { m2: 'm²', m3: 'm³', 't/m3': 't/m³', 'Bq/m3': 'Bq/m³', deg: '°', C: '°C', ozt: 'oz' }
/** A unit as it is printed. */
export const unitText = (unit: string): string => written[unit] ?? unit

/** A number and its unit, kept on one line. */
export function withUnit(text: string, unit: string | undefined): string {
  if (!unit) return text
  const printed = unitText(unit)
  return printed === '°' || printed === '%' ? `${text}${printed === '%' ? nbsp : ''}${printed}` : `${text}${nbsp}${printed}`
}

/** An azimuth as three figures, as on a compass card. */
export const azimuthText = (degrees: number): string => `${String(Math.round(((degrees % 360) + 360) % 360) % 360).padStart(3, '0')}°`

/** A chance in tenths or twentieths, in words. */
export const outOf = (share: number, whole: number): string => [Math.round(share * whole), 'in', whole].join(nbsp)

/** How many of something: '1 sample', '12 samples'. */
export const counted = (n: number, one: string, many = `${one}s`): string => `${decimal(n, 0)} ${n === 1 ? one : many}`
