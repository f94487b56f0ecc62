export { placeLabels } from '@lodebook/paper/sheet'
export type { Placed, Wanted } from '@lodebook/paper/sheet'
