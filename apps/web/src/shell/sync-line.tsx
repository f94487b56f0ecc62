import { book } from '../link/desk.ts'
import { clockText } from '../words/moment.ts'
import type { HubState } from '../bookkeeper/desk.ts'
import { linkTo } from './route.ts'

/** One line that says where the book is kept: here, at the hub too, or what still waits. */
export function SyncLine({ short = false }: { readonly short?: boolean }) {
  const hub = book.value?.hub
  if (!hub) return null
  return <a class="sync-line" href={linkTo('book', 'device')}>{short ? shortOf(hub) : longOf(hub)}</a>
}

function shortOf(hub: HubState): string {
  if (hub.state === 'none') return 'kept here'
  if (hub.state === 'level') return 'all sent'
  if (hub.state === 'other-book' || hub.state === 'unjoined') return 'other book'
  return hub.waiting > 0 ? `${hub.waiting} to send` : hub.state === 'unreachable' ? 'kept here' : '…'
}

/** Where the book is, in a sentence. */
export function longOf(hub: HubState): string {
  switch (hub.state) {
    case 'asking': return 'Asking the hub…'
    case 'none': return 'Kept on this device. There is no hub at this address.'
    case 'unreachable': return `Kept on this device. The hub can’t be reached${hub.waiting > 0 ? `; ${hub.waiting} to send` : ''}.`
    case 'sending': return `Sending ${hub.waiting} to the hub…`
    case 'level': return `Kept here and at the hub${hub.levelAt ? `, level at ${clockText(hub.levelAt)}` : ''}.`
    case 'refused': return `The hub did not take something: ${hub.says ?? 'it gave no reason'}`
    case 'other-book': return 'The hub at this address keeps another book. Nothing is sent or fetched.'
    case 'unjoined': return 'The hub keeps a book too. Say whether it is this one.'
  }
}
