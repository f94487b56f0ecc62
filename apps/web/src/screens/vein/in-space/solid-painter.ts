import type { Enu } from '@lodebook/reckon'
import { BufferAttribute, BufferGeometry, CanvasTexture, Color, DirectionalLight, DoubleSide, HemisphereLight, LineBasicMaterial, LineDashedMaterial, LineSegments, Mesh, MeshBasicMaterial, MeshLambertMaterial, OrthographicCamera, Points, PointsMaterial, Scene as Space, SRGBColorSpace, WebGLRenderer } from 'three'
import { axesOf } from './camera.ts'
import type { Camera, Room } from './camera.ts'
import type { Looks, Painter } from './looks.ts'
import type { MarkSet, Scene } from './scene.ts'

/**
 * Draws the scene as solids with the device's graphics chip. Everything of one sort is one buffer, so that ten thousand stations and five
 * thousand finds cost a handful of draw calls a frame.
 * @throws when the device has no graphics context to give
 */
export function solidPainter(canvas: HTMLCanvasElement, scene: Scene, hidden: ReadonlySet<string>, looks: Looks): Painter {
  const renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true })
  const middle = [0, 1, 2].map(i => (scene.bounds.min[i]! + scene.bounds.max[i]!) / 2) as unknown as Enu // single floats keep their millimetres about it
  const put = (points: readonly Enu[]) => Float32Array.from(points.flatMap(p => [p[0] - middle[0], p[1] - middle[1], p[2] - middle[2]]))
  const space = new Space(), ended: (() => void)[] = [], sized: { readonly material: PointsMaterial, readonly size: number }[] = []
  const keep = <T extends { dispose: () => void }>(thing: T): T => { ended.push(() => { thing.dispose() }); return thing }
  const geometry = (points: readonly Enu[], index?: readonly number[]) => {
    const made = keep(new BufferGeometry())
    made.setAttribute('position', new BufferAttribute(put(points), 3))
    if (index) made.setIndex([...index])
    return made
  }
  const lines = (points: readonly Enu[], colour: string, opacity = 1) =>
    space.add(new LineSegments(geometry(points), keep(new LineBasicMaterial({ color: new Color(colour), transparent: opacity < 1, opacity }))))

  if (!hidden.has('passages')) {
    const { corners, faces, edges } = solidsOf(scene)
    const solid = geometry(corners, faces)
    solid.computeVertexNormals()
    const rock = { color: new Color(looks.wall), side: DoubleSide, flatShading: true, polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 }
    space.add(new Mesh(solid, keep(new MeshLambertMaterial(rock))))
    lines(edges, looks.ink, 0.55)
    lines(scene.legs.flat(), looks.soft, 0.6)
  }
  for (const sheet of scene.sheets) {
    if (hidden.has(sheet.is)) continue
    const colour = new Color(sheet.is === 'vein' ? looks.quartz : looks.hatch)
    space.add(new Mesh(geometry(sheet.corners, [0, 1, 2, 0, 2, 3]), keep(new MeshBasicMaterial({ color: colour, transparent: true, opacity: sheet.is === 'vein' ? 0.55 : 0.28, side: DoubleSide, depthWrite: false }))))
    const edge = new LineSegments(geometry([0, 1, 1, 2, 2, 3, 3, 0].map(i => sheet.corners[i]!)), keep(sheet.is === 'fault' ? new LineDashedMaterial({ color: new Color(looks.ink), dashSize: 1.2, gapSize: 0.5 }) : new LineBasicMaterial({ color: new Color(looks.ink) })))
    edge.computeLineDistances()
    space.add(edge)
  }
  if (!hidden.has('lost')) {
    const pairs = (is: string) => scene.lines.filter(l => l.is === is).flatMap(l => l.points.slice(1).flatMap((p, i) => [l.points[i]!, p]))
    lines(pairs('case'), looks.accent, 0.8)
    lines(pairs('heading'), looks.ink)
  }
  for (const set of scene.marks) {
    if (hidden.has(set.kind) || set.at.length === 0) continue
    const texture = keep(new CanvasTexture(stamp(set, looks)))
    texture.colorSpace = SRGBColorSpace
    const material = keep(new PointsMaterial({ map: texture, sizeAttenuation: false, alphaTest: 0.4, depthTest: false, transparent: true }))
    sized.push({ material, size: set.kind === 'stations' ? 7 : 11 })
    space.add(new Points(geometry(set.at), material))
  }
  space.add(new HemisphereLight(0xffffff, 0x888888, 2.2))
  const lamp = new DirectionalLight(0xffffff, 1.4)
  space.add(lamp)

  const eye = new OrthographicCamera()
  const paint = (camera: Camera, room: Room) => {
    const ratio = Math.min(2, devicePixelRatio)
    if (renderer.getPixelRatio() !== ratio) renderer.setPixelRatio(ratio)
    const [wide, high] = [Math.floor(room.width * ratio), Math.floor(room.height * ratio)]
    if (canvas.width !== wide || canvas.height !== high) renderer.setSize(room.width, room.height, false)
    const small = Math.min(1, Math.max(0.45, camera.k / 6)) // from far off a drift full of marks is still a drift
    for (const { material, size } of sized) material.size = size * small * ratio
    const { away, up } = axesOf(camera), half = { x: room.width / 2 / camera.k, y: room.height / 2 / camera.k }
    const deep = 2 * Math.hypot(...[0, 1, 2].map(i => scene.bounds.max[i]! - scene.bounds.min[i]!)) + 100
    Object.assign(eye, { left: -half.x, right: half.x, top: half.y, bottom: -half.y, near: 0, far: 2 * deep })
    const [tx, ty, tz] = [0, 1, 2].map(i => camera.target[i]! - middle[i]!) as [number, number, number]
    eye.up.set(...up as [number, number, number])
    eye.position.set(tx - away[0] * deep, ty - away[1] * deep, tz - away[2] * deep)
    eye.lookAt(tx, ty, tz)
    eye.updateProjectionMatrix()
    lamp.position.set(-away[0] + up[0], -away[1] + up[1], -away[2] + up[2])
    renderer.render(space, eye)
  }
  return { paint, how: 'solid', end: () => { ended.forEach((end) => { end() }); renderer.dispose() } }
}

/** Passages as one list of corners, of triangles and of edges. */
function solidsOf(scene: Scene): { readonly corners: readonly Enu[], readonly faces: readonly number[], readonly edges: readonly Enu[] } {
  const corners: Enu[] = [], faces: number[] = [], edges: Enu[] = []
  for (const { rings } of scene.passages) {
    rings.forEach((ring, i) => {
      const first = corners.length
      corners.push(...ring)
      if (i === 0 || i === rings.length - 1) {
        faces.push(first, first + 1, first + 2, first, first + 2, first + 3)
        edges.push(ring[0], ring[1], ring[1], ring[2], ring[2], ring[3], ring[3], ring[0])
      }
      if (i === 0) return
      for (let k = 0; k < 4; k++) {
        const next = (k + 1) % 4, [a, b, c, d] = [first - 4 + k, first - 4 + next, first + next, first + k]
        faces.push(a, b, c, a, c, d)
        edges.push(rings[i - 1]![k]!, ring[k]!)
      }
    })
  }
  return { corners, faces, edges }
}

/** The picture of one mark, as a small canvas. */
function stamp({ shape, kind }: MarkSet, looks: Looks): HTMLCanvasElement {
  const canvas = document.createElement('canvas'), size = 32
  canvas.width = canvas.height = size
  const pen = canvas.getContext('2d')!
  pen.fillStyle = kind === 'hazard' ? looks.accent : looks.ink; pen.strokeStyle = looks.ink; pen.lineWidth = 5
  pen.beginPath()
  if (shape === 'dot') pen.arc(16, 16, 12, 0, 7)
  else if (shape === 'square') pen.rect(5, 5, 22, 22)
  else if (shape === 'triangle') { pen.moveTo(16, 2); pen.lineTo(30, 28); pen.lineTo(2, 28); pen.closePath() } else if (shape === 'diamond') { pen.moveTo(16, 2); pen.lineTo(30, 16); pen.lineTo(16, 30); pen.lineTo(2, 16); pen.closePath() } else { pen.moveTo(6, 6); pen.lineTo(26, 26); pen.moveTo(26, 6); pen.lineTo(6, 26) }
  if (shape === 'cross') pen.stroke(); else pen.fill()
  return canvas
}
