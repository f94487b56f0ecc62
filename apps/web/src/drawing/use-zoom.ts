import type { RefObject } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import { select } from 'd3-selection'
import type { ZoomBehavior } from 'd3-zoom'
import { zoom, ZoomTransform } from 'd3-zoom'
import type { View } from './view.ts'

/**
 * Pinch, wheel and drag on a drawing. The view itself belongs to the caller, who may tie several drawings together.
 * One finger scrolls the page while the whole drawing is in sight and moves the drawing once it is enlarged; the wheel scrolls the page
 * until the drawing has been touched or Ctrl is held, so that nobody is caught in a drawing on the way down a page.
 */
export function useZoom(ref: RefObject<SVGSVGElement | null>, view: View | undefined, fitted: View | undefined, onView: (view: View) => void): void {
  const behaviour = useRef<ZoomBehavior<SVGSVGElement, unknown>>(undefined)
  const latest = useRef({ onView, enlarged: false })
  latest.current = { onView, enlarged: view !== undefined && fitted !== undefined && view.k > fitted.k * 1.05 }

  useEffect(() => {
    const svg = ref.current!
    behaviour.current = zoom<SVGSVGElement, unknown>()
      .filter((event: Event) => {
        if (event instanceof WheelEvent) return event.ctrlKey || svg.contains(document.activeElement)
        if (event.type.startsWith('touch')) return latest.current.enlarged || (event as TouchEvent).touches.length > 1
        return !(event instanceof MouseEvent && (event.button !== 0 || event.ctrlKey))
      })
      .on('zoom', (event: { readonly transform: ZoomTransform, readonly sourceEvent: unknown }) => {
        if (event.sourceEvent) latest.current.onView({ k: event.transform.k, x: event.transform.x, y: event.transform.y })
      })
    select(svg).call(behaviour.current)
    return () => { select(svg).on('.zoom', null) }
  }, [])

  useEffect(() => {
    const svg = ref.current
    if (!svg || !view) return
    Object.assign(svg, { __zoom: new ZoomTransform(view.k, view.x, view.y) }) // where d3-zoom keeps its state: it goes on from the view the caller holds
    svg.style.touchAction = latest.current.enlarged ? 'none' : 'pan-y'
  }, [view])

  useEffect(() => { if (fitted) behaviour.current?.scaleExtent([fitted.k * 0.5, fitted.k * 100]) }, [fitted])
}
