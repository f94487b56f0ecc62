import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import decodeQR from 'qr/decode.js'
import { describe, expect, it } from 'vitest'
import { InputError } from '@lodebook/reckon'
import { codeSide, labelLayout, labelSheets, openFont, paperSizes, pointsPerMm, rulerMm } from '../src/index.ts'
import type { LabelsAsked, PaperName } from '../src/index.ts'

const require = createRequire(import.meta.url)
const font = (weight: number) => new Uint8Array(readFileSync(require.resolve(`@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin-${weight}-normal.woff`)))
const fonts = { regular: font(400), bold: font(700) }
const asked = (over: Partial<LabelsAsked> = {}): LabelsAsked =>
  ({ labels: Array.from({ length: 30 }, (_, i) => `B-${String(i + 1).padStart(3, '0')}`), mine: 'Test adit', paper: 'A4', copies: 1, fonts, made: 0, packed: false, ...over })
const text = async (over: Partial<LabelsAsked> = {}) => new TextDecoder('latin1').decode(await labelSheets(asked(over)))

/** What the drawing says in one page's content: rectangles and lines in millimetres, undone from the page's own transform. */
const rectangles = (page: string) => [...page.matchAll(/^([-\d.]+) ([-\d.]+) ([-\d.]+) ([-\d.]+) re$/gm)].map(m => m.slice(1).map(Number) as [number, number, number, number])
const pagesOf = (pdf: string) => pdf.split('stream\n').filter(part => / re$/m.test(part))

describe.each(['A4', 'Letter'] as const)('labels on %s', (paper: PaperName) => {
  it('[LB1] stand on the sheet without touching each other or the edge', () => {
    const boxes = labelLayout(paper), { wide, high } = paperSizes[paper]
    expect(boxes.length).toBeGreaterThanOrEqual(18)
    for (const box of boxes) {
      expect(box.x).toBeGreaterThanOrEqual(5)
      expect(box.x + box.wide).toBeLessThanOrEqual(wide - 5)
      expect(box.y + box.high).toBeLessThanOrEqual(high - 12)
      for (const other of boxes) if (other !== box) expect(Math.abs(other.x - box.x) >= box.wide || Math.abs(other.y - box.y) >= box.high).toBe(true)
    }
  })

  it('[LB2] are true to size: the sheet in points, one millimetre as one unit, each frame and code as large as stated', async () => {
    const pdf = await text({ paper }), { wide, high } = paperSizes[paper]
    const media = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf)!
    expect(Number(media[1])).toBeCloseTo(wide * 72 / 25.4, 3)
    expect(Number(media[2])).toBeCloseTo(high * 72 / 25.4, 3)
    const page = pagesOf(pdf)[0]!, scale = [...page.matchAll(/^([\d.]+) 0 0 ([\d.]+) 0 0 cm$/gm)].at(-1)!
    expect(Number(scale[1])).toBeCloseTo(pointsPerMm, 4)
    const frames = rectangles(page).filter(([, , w, h]) => w === 62 && h === 32)
    expect(frames).toHaveLength(Math.min(30, labelLayout(paper).length))
    frames.forEach(([x, y], i) => { expect([x, y].map(v => v.toFixed(3))).toEqual([labelLayout(paper)[i]!.x.toFixed(3), labelLayout(paper)[i]!.y.toFixed(3)]) })
    const line = /^([\d.]+) ([\d.]+) m\n([\d.]+) \2 l\nS$/m.exec(page.slice(page.lastIndexOf('0.3 w')))!
    expect(Number(line[3]) - Number(line[1])).toBeCloseTo(rulerMm, 3)
  })

  it('[LB3] carry codes that read back as the number, at the size stated', async () => {
    const page = pagesOf(await text({ paper, labels: ['B-017', 'GOB 9/4'] }))[0]!
    const isFrame = ([, , w, h]: readonly number[]) => w === 62 && h === 32
    const frames = rectangles(page).filter(isFrame), dark = rectangles(page).filter(r => !isFrame(r))
    expect(frames.map(([x, y]) => {
      const own = dark.filter(([rx, ry]) => rx >= x && rx < x + 62 && ry >= y && ry < y + 32)
      const left = Math.min(...own.map(r => r[0])), top = Math.min(...own.map(r => r[1]))
      expect(Math.max(...own.map(r => r[1] + r[3])) - top).toBeCloseTo(codeSide, 3)
      // Seen by a camera of ten points to the millimetre, with the white round it that the label leaves.
      const side = (codeSide + 6) * 10, data = new Uint8Array(side * side * 4).fill(255)
      for (const [rx, ry, w, h] of own) {
        const [x0, x1, y0, y1] = [rx - left, rx + w - left, ry - top, ry + h - top].map(mm => Math.round((mm + 3) * 10)) as [number, number, number, number]
        for (let py = y0; py < y1; py++) {
          for (let px = x0; px < x1; px++) data.fill(0, (py * side + px) * 4, (py * side + px) * 4 + 3)
        }
      }
      return decodeQR({ width: side, height: side, data })
    })).toEqual(['B-017', 'GOB 9/4'])
  })
})

describe('a roll of labels', () => {
  it('[LB4] goes over as many sheets as it needs; two copies take twice as many', async () => {
    const each = labelLayout('A4').length, count = (pdf: string) => [...pdf.matchAll(/\/Type \/Page\b/g)].length
    expect(count(await text())).toBe(Math.ceil(30 / each))
    expect(count(await text({ copies: 2 }))).toBe(Math.ceil(60 / each))
    expect(count(await text({ labels: [] }))).toBe(1)
  })

  it('[LB6] has letters with a shape: each font that is put in holds the outlines of what is written', async () => {
    const bytes = Buffer.from(await text({ labels: ['B-017'] }), 'latin1'), outlines: number[] = []
    for (let at = bytes.indexOf('stream\ntrue'); at >= 0; at = bytes.indexOf('stream\ntrue', at + 1)) {
      const sfnt = bytes.subarray(at + 'stream\n'.length), entry = sfnt.subarray(12).indexOf('glyf')
      outlines.push(sfnt.readUInt32BE(12 + entry + 12))
    }
    expect(outlines).toHaveLength(2)
    for (const length of outlines) expect(length).toBeGreaterThan(300)
    expect([...openFont(font(700)).subarray(0, 4)]).toEqual([0, 1, 0, 0]) // what every plain TrueType font begins with
    expect(() => openFont(font(700).subarray(0, 60))).toThrow(InputError)
  })

  it('[LB5] is the same to the byte for the same asked', async () => {
    expect(await labelSheets(asked({ packed: true }))).toEqual(await labelSheets(asked({ packed: true })))
  })
})
