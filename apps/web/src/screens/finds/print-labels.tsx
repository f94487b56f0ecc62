import type { PaperName } from '@lodebook/paper'
import type { Entry } from '@lodebook/book'
import { labelsOn } from '@lodebook/answers'
import boldFont from '@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin-700-normal.woff?url'
import regularFont from '@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin-400-normal.woff?url'
import { useState } from 'preact/hooks'
import { book, desk } from '../../link/desk.ts'
import { ChoiceRow } from '../../shell/choice-row.tsx'

const papers = ['A4', 'Letter'] as const

const bytesAt = async (address: string): Promise<Uint8Array> => new Uint8Array(await (await fetch(address)).arrayBuffer())

/** Makes the sheets of a roll's labels on this device, with no signal, and hands them over as a PDF. */
export function PrintLabels({ roll }: { readonly roll: string }) {
  const [paper, setPaper] = useState<PaperName>(book.value?.units === 'feet and oz/ton' ? 'Letter' : 'A4'), [says, setSays] = useState('')
  const make = async () => {
    setSays('Drawing the sheets…')
    try {
      const [{ labelSheets }, [line], regular, bold] = await Promise.all([import('@lodebook/paper'), desk.entries([roll]), bytesAt(regularFont), bytesAt(boldFont)])
      const labels = labelsOn((line as { readonly entry: Entry }).entry)
      const pdf = await labelSheets({ labels, paper, copies: 2, mine: book.value?.name ?? '', made: Date.now(), fonts: { regular, bold } })
      const link = document.createElement('a')
      link.href = URL.createObjectURL(new Blob([pdf as BlobPart], { type: 'application/pdf' }))
      link.download = `labels-${labels[0] ?? 'none'}-${paper}.pdf`
      link.click()
      setTimeout(() => URL.revokeObjectURL(link.href), 60_000)
      setSays(`${labels.length} labels, two of each, are in ${link.download}. Print at full size and hold a rule to the line at the foot.`)
    } catch (problem) { setSays(`The sheets could not be made: ${problem instanceof Error ? problem.message : String(problem)}`) }
  }
  return (
    <div class="print-labels">
      <ChoiceRow label="Paper" of={papers} value={paper} onChoose={setPaper} />
      <button type="button" class="btn" onClick={() => { void make() }}>Print the labels</button>
      <p class="echo" role="status">{says}</p>
    </div>
  )
}
