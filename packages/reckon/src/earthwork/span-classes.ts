/** A class of rock by its rating, with the widest unsupported span the rating's chart gives it and how long that stood. */
export interface SpanClass { readonly name: string, readonly span: number, readonly stands: string }

/**
 * Spans and stand-up times of the classes of RMR89, narrowest first, metres.
 * Source: Z. T. Bieniawski, Engineering Rock Mass Classifications, 1989, from memory (status M in checks/physical.md section 4.1).
 */
export const spanClasses: readonly SpanClass[] = [
  { name: 'very poor', span: 1, stands: '30 minutes' }, { name: 'poor', span: 2.5, stands: '10 hours' }, { name: 'fair', span: 5, stands: 'a week' },
  { name: 'good', span: 10, stands: 'a year' }, { name: 'very good', span: 15, stands: '20 years' },
]

/** The poorest class whose span is not less than the width: what the rock must be rated for such an opening by that table; undefined beyond all. */
export const classForSpan = (width: number): SpanClass | undefined => spanClasses.find(row => width <= row.span)
