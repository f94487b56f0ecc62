import { InputError, positive } from '../core/index.ts'

export interface TimberCount {
  readonly sets: number
  readonly caps: number
  readonly posts: number
  /** Collars between neighbouring sets at the top corners, and foot blocks under the posts. */
  readonly collars: number
  readonly footBlocks: number
  readonly wedges: number
  /** Boards over the back and down both ribs. */
  readonly lagging: number
  /** Metres (or feet) of round timber in caps, posts and collars, and of lagging boards. */
  readonly roundLength: number
  readonly boardLength: number
}

interface ClearSection { readonly width: number, readonly height: number }

/**
 * Pieces for a length of way on three-piece sets with close lagging: a cap on two posts at each set, collars between, boards from set to set.
 *
 * One set at each end and none further apart than the spacing. Boards are counted whole round the opening: (width + 2 height) / board for each bay.
 * @param length  to be timbered; 0 for a single set
 * @param spacing  from set to set at most
 * @param section  clear width and height of the way
 * @param board  how broad one lagging board is
 * @param ribs  whether the ribs are lagged too
 * @throws InputError for sizes that are not above zero
 */
export function timberCount(length: number, spacing: number, section: ClearSection, board: number, ribs = true): TimberCount {
  if (!(length >= 0 && Number.isFinite(length))) throw new InputError('length', length, 'a length of zero or more')
  positive(spacing, 'spacing')
  positive(board, 'board')
  const width = positive(section.width, 'section.width'), height = positive(section.height, 'section.height')
  const bays = Math.max(0, Math.ceil(length / spacing - 1e-9)), sets = bays + 1
  const around = width + (ribs ? 2 * height : 0), lagging = bays * Math.ceil(around / board - 1e-9)
  const each = bays === 0 ? 0 : length / bays
  return {
    sets, caps: sets, posts: 2 * sets, collars: 2 * bays, footBlocks: 2 * sets, wedges: 4 * sets, lagging,
    roundLength: sets * (width + 2 * height) + 2 * bays * each, boardLength: lagging * each,
  }
}
