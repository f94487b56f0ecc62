/** One time at which several things could have been left together. */
export interface Visit {
  /** The years that all of them share: latest first year to earliest last year; null where no last year is known. */
  readonly from: number
  readonly to: number | null
  /** Which spans, by their place in the list. */
  readonly items: readonly number[]
}

/**
 * The fewest times at which people must have been there for every span to hold one of them.
 *
 * Spans that do not overlap mean more than one visit, not an error. Spans are taken by their last year; each visit takes all that
 * reach back to the earliest last year still open, which is the known least number for intervals. A thing that fits two visits
 * is listed with the earlier.
 * @param spans  years, closed at both ends; without `to` open
 */
export function fewestVisits(spans: readonly { readonly from: number, readonly to?: number }[]): readonly Visit[] {
  const open = spans.map(({ from, to = Infinity }, item) => ({ item, from, to })).sort((a, b) => a.to - b.to || a.from - b.from)
  const visits: Visit[] = []
  while (open.length > 0) {
    const last = open[0]?.to ?? Infinity
    const together = open.filter(({ from }) => from <= last)
    visits.push({
      from: Math.max(...together.map(({ from }) => from)), to: last === Infinity ? null : last,
      items: together.map(({ item }) => item).sort((a, b) => a - b),
    })
    for (const span of together) open.splice(open.indexOf(span), 1)
  }
  return visits
}
