import { expect, it } from 'vitest'
import { createReckoner } from '../src/index.ts'
import { SmallBook } from './small-book.ts'

it('an assumption under a name that nothing asks for is doubted, and the nearest known name given', () => {
  const b = new SmallBook()
  b.write('assumption', { name: 'gold recoverey', value: '0.7' })
  b.write('assumption', { name: 'Wage to beat', value: '180' })
  const looks = createReckoner(b.book).answer('secondLooks')
  expect(looks).toHaveLength(1)
  expect(looks[0]!.sentence).toContain('gold recoverey')
  expect(looks[0]!.todo).toContain('gold recovery')
})
