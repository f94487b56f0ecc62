import type { JSX } from 'preact'

/** The marks of our drawings. Each has a shape of its own; colour never tells two apart. */
export const symbols = ['station', 'tie', 'sample', 'sample-below', 'sample-unused', 'target', 'target-gold', 'target-scrap', 'relic', 'hazard', 'structure', 'width', 'air', 'ground', 'other', 'name',
  'dip-vein', 'dip-stringer', 'dip-fault', 'dip-contact', 'dip-joint', 'dip-foliation', 'groove',
  'pole-vein', 'pole-stringer', 'pole-fault', 'pole-contact', 'pole-joint', 'pole-foliation', 'pole-groove', 'width-here', 'face',
] as const
export type SymbolName = typeof symbols[number]

/** How far a mark reaches from its middle, pixels. */
export const reach: Readonly<Record<SymbolName, number>> = {
  station: 4, tie: 7, sample: 5, 'sample-below': 5, 'sample-unused': 5, target: 5, 'target-gold': 5, 'target-scrap': 5, relic: 6, hazard: 9, structure: 6, width: 6, air: 6, ground: 6, other: 4, name: 1,
  'dip-vein': 8, 'dip-stringer': 7, 'dip-fault': 8, 'dip-contact': 7, 'dip-joint': 7, 'dip-foliation': 7, groove: 8,
  'pole-vein': 4, 'pole-stringer': 4, 'pole-fault': 5, 'pole-contact': 4, 'pole-joint': 4, 'pole-foliation': 4, 'pole-groove': 5, 'width-here': 6, face: 7,
}

const shapes: Readonly<Record<SymbolName, JSX.Element>> = {
  station: <><circle r="3.2" class="open" /><circle r="0.9" class="full" /></>,
  tie: <><path d="M0-6.5 6 4.5H-6Z" class="open" /><circle r="1.2" class="full" /></>,
  sample: <path d="M-4-4H4V4H-4Z" class="full" />,
  'sample-below': <path d="M-4-4H4V4H-4Z" class="open" />,
  'sample-unused': <path d="M-4-4H4V4H-4ZM-4 4 4-4" class="open" />,
  target: <circle r="4.4" class="open" />,
  'target-gold': <><circle r="4.4" class="open" /><circle r="2.2" class="full" /></>,
  'target-scrap': <><circle r="4.4" class="open" /><path d="M-3 3 3-3" class="line" /></>,
  relic: <path d="M0-5.5 5.5 0 0 5.5-5.5 0Z" class="open" />,
  hazard: <><path d="M0-8.5 8.5 6.5H-8.5Z" class="full" /><path d="M0-3.6V1.6M0 3.4V4.8" class="cut" /></>,
  structure: <path d="M-6 0H6M0 0V4.5" class="line" />,
  width: <path d="M-3.5-5V5M3.5-5V5M-3.5 0H3.5" class="line" />,
  air: <path d="M-6 1.5C-4-3-2-3 0 0S4 3 6-1.5" class="line" />,
  ground: <path d="M-5-4 0 4 5-4" class="line" />,
  other: <path d="M-3.5-3.5 3.5 3.5M3.5-3.5-3.5 3.5" class="line" />,
  // A plane on a plan: its strike along x, a tick to the side it dips to; then its pole on the net.
  'dip-vein': <><path d="M-8 0H8" class="line heavy" /><path d="M0 0V6" class="line" /></>,
  'dip-stringer': <path d="M-6 0H6M0 0V4.5" class="line thin" />,
  'dip-fault': <path d="M-8-1.6H8M-8 1.6H8M0 1.6V7" class="line" />,
  'dip-contact': <><path d="M-7 0H7M0 0V5" class="line" /><circle r="2.2" class="open" /></>,
  'dip-joint': <><path d="M-7 0H7" class="line" /><path d="M-2 0H2V4H-2Z" class="open" /></>,
  'dip-foliation': <><path d="M-7 0H7" class="line" /><path d="M-3 0H3L0 5Z" class="full" /></>,
  groove: <path d="M-8 0H6M2-3.500 7.500 0 2 3.500" class="line" />,
  'pole-vein': <circle r="3.4" class="full" />,
  'pole-stringer': <circle r="3" class="open" />,
  'pole-fault': <path d="M-4.200-4.200H4.200V4.200H-4.200Z" class="full" />,
  'pole-contact': <path d="M0-4.600 4.600 0 0 4.600-4.600 0Z" class="open" />,
  'pole-joint': <path d="M-3.500-3.500 3.500 3.500M3.500-3.500-3.500 3.500" class="line" />,
  'pole-foliation': <path d="M0-4.400 4 3H-4Z" class="open" />,
  'pole-groove': <><circle r="4.400" class="open" /><path d="M-2.600 0H2.600M0-2.600V2.600" class="line thin" /></>,
  'width-here': <><path d="M-3.500-5V5M3.500-5V5M-3.500 0H3.500" class="line" /><path d="M-3.500-5H3.500V5H-3.500Z" class="full" /></>,
  face: <path d="M-6-5H1L7 0 1 5H-6Z" class="full" />,
  name: <g />,
}

/** One mark at the origin of whatever it stands in. */
export const Mark = ({ name }: { readonly name: SymbolName }) => <g class="mark">{shapes[name]}</g>

/** A mark on a line of text. */
export const InlineMark = ({ name }: { readonly name: SymbolName }) => (
  <svg class="inline-mark" viewBox="-10 -10 20 20" width="22" height="22" aria-hidden="true"><Mark name={name} /></svg>
)

/** The mark for a placed entry, from its kind and its tag. */
export function symbolOf(kind: string, tag: string): SymbolName {
  if (kind === 'target') return tag === 'gold' ? 'target-gold' : tag === 'scrap iron' || tag === 'other metal' ? 'target-scrap' : 'target'
  if (kind === 'sample' || kind === 'relic' || kind === 'hazard' || kind === 'structure' || kind === 'width' || kind === 'air' || kind === 'ground') return kind
  return 'other'
}

const features = ['vein', 'stringer', 'fault', 'contact', 'joint', 'foliation'] as const
/** The mark of a reading on a plan: a strike with its dip, or the way of grooves. */
export const dipSymbol = (feature: string): SymbolName => { const known = features.find(f => f === feature); return known ? `dip-${known}` : feature === 'striae' ? 'groove' : 'structure' }
/** The mark of a reading on the net. */
export const poleSymbol = (feature: string): SymbolName => { const known = features.find(f => f === feature); return known ? `pole-${known}` : feature === 'striae' ? 'pole-groove' : 'other' }
