import type { Enu } from '@lodebook/reckon'
import type { Point } from '../../../drawing/view.ts'
import { axesOf, projector } from './camera.ts'
import type { Camera, Room } from './camera.ts'
import type { Looks, Painter } from './looks.ts'
import type { MarkSet, Scene } from './scene.ts'

/** Draws the scene as an axonometric drawing on a plain canvas, for devices without a graphics chip that can be used. */
export function drawnPainter(canvas: HTMLCanvasElement, scene: Scene, hidden: ReadonlySet<string>, looks: Looks): Painter {
  const pen = canvas.getContext('2d')!
  const paint = (camera: Camera, room: Room) => {
    const dense = Math.min(2, devicePixelRatio)
    const [wide, high] = [Math.round(room.width * dense), Math.round(room.height * dense)]
    if (canvas.width !== wide || canvas.height !== high) { canvas.width = wide; canvas.height = high }
    pen.setTransform(dense, 0, 0, dense, 0, 0)
    pen.clearRect(0, 0, room.width, room.height)
    const at = projector(camera, room), { away } = axesOf(camera)
    const depth = (p: Enu) => p[0] * away[0] + p[1] * away[1] + p[2] * away[2]
    const far = (points: readonly Enu[]) => points.reduce((sum, p) => sum + depth(p), 0) / points.length
    // Far to near: sheets and passages together, so that what stands in front covers.
    const layers = [
      ...scene.sheets.filter(s => !hidden.has(s.is)).map(s => ({ far: far(s.corners), draw: () => sheet(s.corners, s.is === 'vein' ? looks.quartz : looks.hatch, s.is === 'fault') })),
      ...(hidden.has('passages') ? [] : scene.passages.map(h => ({ far: far(h.rings.flat()), draw: () => passage(h.rings) }))),
    ].sort((a, b) => b.far - a.far)
    function trail(points: readonly Point[]) {
      pen.beginPath()
      points.forEach((p, i) => { if (i === 0) pen.moveTo(p.x, p.y); else pen.lineTo(p.x, p.y) })
    }
    function shape(points: readonly Point[]) { trail(points); pen.closePath() }
    function sheet(corners: readonly Enu[], fill: string, dashed: boolean) {
      shape(corners.map(at))
      pen.globalAlpha = 0.55; pen.fillStyle = fill; pen.fill(); pen.globalAlpha = 1
      pen.setLineDash(dashed ? [12, 5] : []); pen.strokeStyle = looks.ink; pen.lineWidth = 1.2; pen.stroke(); pen.setLineDash([])
    }
    function passage(rings: Scene['passages'][number]['rings']) {
      pen.lineWidth = 1; pen.strokeStyle = looks.ink; pen.fillStyle = looks.wall
      for (let i = 1; i < rings.length; i++) {
        const a = rings[i - 1]!, b = rings[i]!
        const sides = [0, 1, 2, 3].map(k => [a[k]!, a[(k + 1) % 4]!, b[(k + 1) % 4]!, b[k]!]).sort((x, y) => far(y) - far(x))
        for (const side of sides) { shape(side.map(at)); pen.globalAlpha = 0.85; pen.fill(); pen.globalAlpha = 0.5; pen.stroke() }
      }
      pen.globalAlpha = 1
    }
    for (const layer of layers) layer.draw()
    pen.strokeStyle = looks.soft; pen.lineWidth = 0.8; pen.beginPath()
    if (!hidden.has('passages')) for (const [a, b] of scene.legs) { const p = at(a), q = at(b); pen.moveTo(p.x, p.y); pen.lineTo(q.x, q.y) }
    pen.stroke()
    for (const l of scene.lines) {
      if (hidden.has('lost')) break
      pen.strokeStyle = l.is === 'heading' ? looks.ink : looks.accent; pen.lineWidth = l.is === 'heading' ? 3 : 0.8
      trail(l.points.map(at)); pen.stroke()
    }
    for (const set of scene.marks) if (!hidden.has(set.kind)) markSet(set)
    function markSet(set: MarkSet) {
      const r = (set.kind === 'stations' ? 2 : 3.5) * Math.min(1, Math.max(0.45, camera.k / 6)) // from far off a drift full of them is still a drift
      pen.beginPath(); pen.fillStyle = set.kind === 'hazard' ? looks.accent : looks.ink; pen.strokeStyle = looks.ink; pen.lineWidth = 1.2
      for (const p of set.at.map(at)) {
        if (p.x < -9 || p.y < -9 || p.x > room.width + 9 || p.y > room.height + 9) continue
        if (set.shape === 'dot') { pen.moveTo(p.x + r, p.y); pen.arc(p.x, p.y, r, 0, 7) } else if (set.shape === 'square') pen.rect(p.x - r, p.y - r, 2 * r, 2 * r)
        else if (set.shape === 'triangle') { pen.moveTo(p.x, p.y - 6); pen.lineTo(p.x + 6, p.y + 5); pen.lineTo(p.x - 6, p.y + 5); pen.closePath() } else if (set.shape === 'diamond') { pen.moveTo(p.x, p.y - 5); pen.lineTo(p.x + 5, p.y); pen.lineTo(p.x, p.y + 5); pen.lineTo(p.x - 5, p.y); pen.closePath() } else { pen.moveTo(p.x - 3, p.y - 3); pen.lineTo(p.x + 3, p.y + 3); pen.moveTo(p.x + 3, p.y - 3); pen.lineTo(p.x - 3, p.y + 3) }
      }
      if (set.shape === 'cross') pen.stroke(); else pen.fill()
    }
  }
  return { paint, end: () => undefined, how: 'drawn' }
}
