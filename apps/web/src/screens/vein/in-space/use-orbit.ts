import type { RefObject } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import type { Point } from '../../../drawing/view.ts'
import { enlargedBy, movedBy, turnedBy } from './camera.ts'
import type { Camera } from './camera.ts'

const turn = 0.4 // degrees a pixel
const still = 6 // pixels a finger may slip and still mean a tap

interface Orbit {
  /** The camera as it is now, and what to do with a new one. */
  readonly now: () => Camera
  readonly onCamera: (camera: Camera) => void
  readonly onTap: (at: Point) => void
  readonly onHover: (at: Point | undefined) => void
}

/** One finger or the mouse turns, two fingers or the other button move and enlarge, the wheel enlarges; a tap picks. */
export function useOrbit(ref: RefObject<HTMLElement | null>, orbit: Orbit): void {
  const latest = useRef(orbit)
  latest.current = orbit
  useEffect(() => {
    const element = ref.current!
    const fingers = new Map<number, Point>()
    let began: Point | undefined, slipped = false
    const local = (e: MouseEvent): Point => { const box = element.getBoundingClientRect(); return { x: e.clientX - box.left, y: e.clientY - box.top } }
    const centred = (p: Point): Point => ({ x: p.x - element.clientWidth / 2, y: p.y - element.clientHeight / 2 })
    const down = (e: PointerEvent) => {
      if ((e.target as Element).closest('button, a, label')) return
      element.setPointerCapture(e.pointerId)
      fingers.set(e.pointerId, local(e))
      if (fingers.size === 1) { began = local(e); slipped = false } else slipped = true
    }
    const move = (e: PointerEvent) => {
      const before = fingers.get(e.pointerId), p = local(e)
      if (!before) { if (e.pointerType === 'mouse') latest.current.onHover(p); return }
      fingers.set(e.pointerId, p)
      if (began && Math.hypot(p.x - began.x, p.y - began.y) > still) slipped = true
      if (!slipped) return
      const { now, onCamera } = latest.current, camera = now(), dx = p.x - before.x, dy = p.y - before.y
      if (fingers.size === 1) onCamera(e.shiftKey || e.buttons === 2 ? movedBy(camera, dx, dy) : turnedBy(camera, -dx * turn, dy * turn))
      else {
        const other = [...fingers].find(([id]) => id !== e.pointerId)![1], middle = centred({ x: (p.x + other.x) / 2, y: (p.y + other.y) / 2 })
        const factor = Math.hypot(p.x - other.x, p.y - other.y) / Math.max(1, Math.hypot(before.x - other.x, before.y - other.y))
        onCamera(movedBy(enlargedBy(camera, factor, middle.x, middle.y), dx / 2, dy / 2))
      }
    }
    const up = (e: PointerEvent) => {
      if (!fingers.delete(e.pointerId)) return
      if (fingers.size === 0 && !slipped && e.type === 'pointerup') latest.current.onTap(local(e))
    }
    const wheel = (e: WheelEvent) => {
      if (!e.ctrlKey && !element.contains(document.activeElement)) return // nobody is caught here on the way down a page
      e.preventDefault()
      const p = centred(local(e))
      latest.current.onCamera(enlargedBy(latest.current.now(), Math.exp(-e.deltaY * 0.0015), p.x, p.y))
    }
    const leave = () => { latest.current.onHover(undefined) }
    const menu = (e: Event) => { e.preventDefault() }
    element.addEventListener('pointerdown', down)
    element.addEventListener('pointermove', move)
    element.addEventListener('pointerup', up)
    element.addEventListener('pointercancel', up)
    element.addEventListener('pointerleave', leave)
    element.addEventListener('wheel', wheel, { passive: false })
    element.addEventListener('contextmenu', menu)
    return () => {
      element.removeEventListener('pointerdown', down)
      element.removeEventListener('pointermove', move)
      element.removeEventListener('pointerup', up)
      element.removeEventListener('pointercancel', up)
      element.removeEventListener('pointerleave', leave)
      element.removeEventListener('wheel', wheel)
      element.removeEventListener('contextmenu', menu)
    }
  }, [])
}
