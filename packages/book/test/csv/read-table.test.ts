import { describe, expect, it } from 'vitest'
import { readTable } from '../../src/csv/read-table.ts'
import { columnLetter } from '../../src/csv/table.ts'

const cells = (text: string) => readTable(text).table.rows.map(row => row.cells)
const first = (text: string) => {
  const [problem] = readTable(text).problems
  if (!problem) throw new Error('no problem was found')
  return problem
}

describe('readTable', () => {
  it.each([[','], [';'], ['\t'], ['|']])('finds %j between cells', (mark) => {
    const { table, problems } = readTable(`bag${mark}width\nB-1${mark}0.4\nB-2${mark}0.5\n`)
    expect(problems).toEqual([])
    expect(table.separator).toBe(mark)
    expect(table.rows).toEqual([{ row: 2, cells: ['B-1', '0.4'] }, { row: 3, cells: ['B-2', '0.5'] }])
  })

  it('keeps commas as tenths where semicolons part the cells', () => {
    expect(cells('bag;width;au\nB-1;0,4;1,25\nB-2;0,5;2,5\n')).toEqual([['B-1', '0,4', '1,25'], ['B-2', '0,5', '2,5']])
  })

  it('keeps separators, line breaks and doubled quotes inside quotes', () => {
    expect(cells('bag,note\r\nB-1,"gouge, ""blue""\nwet"\r\n')).toEqual([['B-1', 'gouge, "blue"\nwet']])
  })

  it('counts rows as a spreadsheet does, blank ones too', () => {
    expect(readTable('bag,width\n\nB-1,1\n,\n  ,\nB-2,2\n').table.rows.map(row => row.row)).toEqual([3, 6])
  })

  it('takes one column, and headings without rows', () => {
    expect(readTable('bag\nB-1\n')).toMatchObject({ table: { headings: [{ text: 'bag', letter: 'A' }], rows: [{ row: 2, cells: ['B-1'] }] }, problems: [] })
    expect(readTable('bag,width\n')).toMatchObject({ table: { rows: [] }, problems: [] })
  })

  it('says that an empty file is empty', () => {
    for (const text of ['', '\n\n', ' , , \n']) expect(first(text)).toMatchObject({ field: 'file', message: 'The file is empty; expected a row of headings and rows below it.' })
  })

  it('names a heading merged over two columns', () => {
    expect(first('bag,width,,au\nB-1,1,2,3\n')).toMatchObject({ field: 'column C', row: 1, value: '2' })
    expect(first('bag,width,,au\nB-1,1,2,3\n').message)
      .toBe('Row 1: column C has no heading, but row 2 holds "2" in it; expected one heading over each column; unmerge headings that span several.')
  })

  it('lets a column without heading pass when nothing stands in it', () => {
    expect(readTable('bag,,au\nB-1,,3\n').problems).toEqual([])
  })

  it('names a heading that stands over two columns', () => {
    expect(first('Bag,Width,width\nB-1,1,2\n').message).toBe('Row 1: "width" stands over column B and column C; expected a heading of its own over each column.')
  })

  it('names rows that are too short or too long, and keeps the rest', () => {
    const { table, problems } = readTable('bag,width,au\nB-1,1\nB-2,1,2\nB-3,1,2,9\nB-4,1,2,\n')
    expect(table.rows.map(row => row.row)).toEqual([3, 5])
    expect(problems.map(problem => problem.message)).toEqual([
      'Row 2: there are only 2 cells; expected 3 cells, one for each heading.',
      'Row 4: "9" stands in column D, past the last heading; expected 3 cells, one for each heading; put quotes round a cell with a separator in it.',
    ])
    expect(problems[0]).toMatchObject({ field: 'au', row: 2 })
  })

  it('names a quote that is never closed', () => {
    expect(first('bag,note\nB-1,fine\nB-2,"open\nB-3,x\n')).toMatchObject({ field: 'note', row: 3 })
  })

  it('refuses a cell of ten megabytes by its row, heading and length, and keeps the other rows', () => {
    const { table, problems } = readTable(`bag,note\nB-1,${'x'.repeat(10_485_760)}\nB-2,short\n`)
    expect(table.rows.map(row => row.row)).toEqual([3])
    expect(problems).toHaveLength(1)
    expect(problems[0]).toMatchObject({ field: 'note', row: 2, expected: 'no more than 10000 in one cell' })
    expect(problems[0]!.message).toBe('Row 2, note: the cell holds 10485760 characters; expected no more than 10000 in one cell.')
    expect(String(problems[0]!.value).length).toBeLessThanOrEqual(60)
  })

  it('refuses a first row of thousands of columns', () => {
    expect(first(`${'a,'.repeat(2000)}z\n`).message).toContain('Row 1 has 2001 columns')
  })
})

describe('columnLetter', () => {
  it('names columns as spreadsheets do', () => {
    expect([0, 1, 25, 26, 51, 52, 701, 702].map(columnLetter)).toEqual(['A', 'B', 'Z', 'AA', 'AZ', 'BA', 'ZZ', 'AAA'])
  })
})
