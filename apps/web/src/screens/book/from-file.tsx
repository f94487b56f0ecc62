import type { CsvOptions, CsvPreview } from '@lodebook/book/csv'
import { kinds } from '@lodebook/book'
import { useEffect, useState } from 'preact/hooks'
import { Writer } from '../../form/writer.tsx'
import { newsOf } from '../../link/announce.ts'
import { book, desk } from '../../link/desk.ts'
import { ChoiceRow } from '../../shell/choice-row.tsx'
import { linkTo } from '../../shell/route.ts'
import { counted } from '../../words/number.ts'
import { ColumnsRead } from './columns-read.tsx'
import { ProblemsByRow } from './problems-by-row.tsx'
import { tapeUnit } from '../../words/tape-unit.ts'

const makes = ['sample', 'assay', 'sample and assay', 'shot', 'target', 'structure', 'width', 'pan', 'work', 'cost', 'crushing'] as const
type Makes = typeof makes[number]
const dates = ['as written', 'day first', 'month first'] as const

/** A file of columns: chosen, shown as it would be read, and written only when the crew accepts. */
export function FromFile() {
  const [file, setFile] = useState<{ readonly name: string, readonly bytes: Uint8Array }>(), [what, setWhat] = useState<Makes>('sample')
  const [order, setOrder] = useState<typeof dates[number]>('as written'), [map, setMap] = useState<Readonly<Record<string, string>>>({})
  const [preview, setPreview] = useState<CsvPreview>(), [says, setSays] = useState(''), [done, setDone] = useState(false)
  const options: CsvOptions = {
    kinds: what === 'sample and assay' ? ['sample', 'assay'] : [what], restToNote: true,
    map: Object.entries(map).filter(([, field]) => field !== '').map(([heading, field]) => ({ headings: [heading], field })),
    ...(order === 'as written' ? {} : { dates: order }),
    input: { units: { length: tapeUnit() }, ...(book.value?.currency ? { currency: book.value.currency } : {}) },
  }
  useEffect(() => {
    if (!file || done) return
    desk.previewFile(file.bytes, options).then(setPreview, (problem: unknown) => { setSays(problem instanceof Error ? problem.message : String(problem)) })
  }, [file, what, order, map])
  const take = async (chosen: File) => {
    setDone(false)
    setSays('')
    setMap({})
    setFile({ name: chosen.name, bytes: new Uint8Array(await chosen.arrayBuffer()) })
  }
  const chosen = (file: File | undefined) => { if (file) void take(file) }
  const accept = async () => {
    const writer = book.value!.writer
    if (writer === '') { setSays('Say who is writing first.'); return }
    const added = await desk.acceptFile(writer, file!.name), news = `${counted(added, 'entry', 'entries')} added from ${file!.name}`
    setDone(true)
    setSays(news)
    newsOf.value = news
  }
  return (
    <>
      <p class="crumb"><a href={linkTo('book')}>Book</a></p>
      <h1>Bring in a file of columns</h1>
      <p class="prose">A laboratory’s results, a surveyor’s list, an old table typed in: comma- or tab-separated, headings in the first row. Nothing is written until you accept; the same file a second time adds nothing.</p>
      <div class="fields from-file">
        <div class="field"><label class="label" for="columns-file">The file</label>
          <input id="columns-file" type="file" class="box" accept=".csv,.tsv,.txt,text/csv" onChange={e => chosen(e.currentTarget.files?.[0])} />
        </div>
        <ChoiceRow show label="Each row is a" of={makes} value={what} onChoose={(w) => { setWhat(w); setMap({}) }} say={w => w === 'sample and assay' ? w : kinds[w]!.label.toLowerCase()} />
        <ChoiceRow show label="Dates such as 5/3/2026" of={dates} value={order} onChoose={setOrder} />
      </div>
      {preview && !done && (
        <section class="section" aria-labelledby="preview">
          <h2 id="preview">{counted(preview.drafts.length, 'entry', 'entries')} can be added from {counted(preview.rows, 'row')}</h2>
          {preview.already.length > 0 && <p>{counted(preview.already.length, 'row')} {preview.already.length === 1 ? 'is' : 'are'} in the book already and {preview.already.length === 1 ? 'is' : 'are'} passed over.</p>}
          <ColumnsRead preview={preview} map={map} onMap={setMap} />
          <ProblemsByRow problems={preview.problems} />
          <Writer />
          <p><button type="button" class="btn strong" disabled={preview.drafts.length === 0} onClick={() => { void accept() }}>Add {counted(preview.drafts.length, 'entry', 'entries')} to the book</button></p>
        </section>
      )}
      <p role="status" class={done ? 'saved' : 'problem'}>{says}</p>
    </>
  )
}
