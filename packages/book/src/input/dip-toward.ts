/** Points of the compass that a field book writes after a dip, clockwise from north, degrees. */
const points = ['n', 'ne', 'e', 'se', 's', 'sw', 'w', 'nw'] as const

const form = new RegExp(`^(.*?\\d\\s*[°'"]?)\\s*(?:to(?:wards?)?\\s+(?:the\\s+)?)?(${points.join('|')})$`, 'i')

export interface DipToward {
  /** The text of the angle alone. */
  readonly angle: string
  /** Azimuth of the point that stood after it, degrees. */
  readonly toward?: number
}

/** Parts a dip from the point of the compass after it: `62 SE` is 62 towards 135; a bare `62` has no point. */
export function dipToward(text: string): DipToward {
  const m = form.exec(text.trim())
  return m === null ? { angle: text } : { angle: m[1]!.trim(), toward: 45 * points.indexOf(m[2]!.toLowerCase() as typeof points[number]) }
}
