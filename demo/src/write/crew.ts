/** The crew and their devices. All three are invented. */
export interface Person { readonly name: string, readonly device: string, readonly lengths: 'feet' | 'metres' }

export const wren: Person = { name: 'Wren Tallow', device: 'phone-wren', lengths: 'feet' }
export const ives: Person = { name: 'Ives Candlewick', device: 'phone-ives', lengths: 'metres' }
export const moss: Person = { name: 'Moss Barrowby', device: 'laptop-camp', lengths: 'metres' }

export const crew = [wren, ives, moss] as const
export const everyone: string = crew.map(person => person.name).join(', ')

export const mineName = 'Tumbledown Lantern (an invented mine)'
export const veinName = 'Lantern vein'
export const faultName = 'Long Shadow fault'
export const firstLaboratory = 'First assayer (invented)'
export const secondLaboratory = 'Second assayer (invented)'
