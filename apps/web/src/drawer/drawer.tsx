import { useEffect, useRef } from 'preact/hooks'
import { back, deeper, drawer, shut } from './drawer-state.ts'
import type { Page } from './drawer-state.ts'
import { AnswerPage } from './answer-page.tsx'
import { EntryPage } from './entry-page.tsx'

const besides = '(min-width: 960px)'

/**
 * The one drawer that every figure opens. On a laptop it stands beside the sheet, which stays alive; on a phone it covers the screen.
 * Escape goes back a level; when it shuts, the focus returns to what opened it.
 */
export function Drawer() {
  const pages = drawer.value, page = pages.at(-1)
  const dialog = useRef<HTMLDialogElement>(null), opener = useRef<Element | null>(null), heading = useRef<HTMLDivElement>(null)
  const isOpen = page !== undefined

  useEffect(() => {
    const element = dialog.current!
    if (isOpen && !element.open) {
      opener.current = document.activeElement
      if (matchMedia(besides).matches) element.show(); else element.showModal()
    } else if (!isOpen && element.open) {
      element.close()
      if (opener.current instanceof HTMLElement || opener.current instanceof SVGElement) opener.current.focus()
    }
  }, [isOpen])
  useEffect(() => {
    if (!page) return
    dialog.current!.scrollTop = 0
    heading.current?.focus({ preventScroll: true })
  }, [page])

  return (
    <dialog
      ref={dialog}
      class="drawer"
      aria-labelledby="drawer-title"
      onCancel={(e) => { e.preventDefault(); back() }}
      onKeyDown={(e) => { if (e.key === 'Escape') { e.preventDefault(); back() } }}
    >
      {page && (
        <>
          <div class="drawer-bar">
            {pages.length > 1 ? <button type="button" class="btn quiet" onClick={back}>← Back</button> : <span />}
            <button type="button" class="btn quiet" onClick={shut}>Shut</button>
          </div>
          <div ref={heading} tabIndex={-1} class="drawer-page"><PageShown page={page} /></div>
        </>
      )}
    </dialog>
  )
}

function PageShown({ page }: { readonly page: Page }) {
  switch (page.is) {
    case 'answer': return <AnswerPage answer={page.answer} />
    case 'entry': return <EntryPage id={page.id} />
    case 'several': return (
      <>
        <h2 id="drawer-title">{page.title}</h2>
        <ul class="several">{page.of.map(({ label, page }) => <li key={label}><button type="button" class="btn" onClick={() => deeper(page)}>{label}</button></li>)}</ul>
      </>
    )
  }
}
