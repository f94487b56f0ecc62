import { baseUnit } from '@lodebook/reckon/units'
import type { BaseUnit, Dimension } from '@lodebook/reckon/units'
import { z } from 'zod'
import { sides, turns } from '../place.ts'

/** The shapes of values that are more than one plain word or number. Every door checks with these and no others. */

/** A lone half of a surrogate pair has no UTF-8 form, so it could not be written to a file and read back; other controls cannot be seen. */
const unprintable = /\p{Surrogate}|[\u0000-\u0008\u000b-\u001f\u007f]/u
export const isPrintable = (text: string): boolean => !unprintable.test(text)

const inkOnOneLine = (text: string): boolean => text !== '' && text === text.trim() && isPrintable(text) && !/[\n\t]/.test(text)
export const lineSchema = z.string().max(1000, 'a line of at most 1000 characters').refine(inkOnOneLine, 'one line of text, without spaces at its ends')
export const noteSchema = z.string().max(50_000, 'at most 50000 characters').refine(text => text.trim() !== '' && isPrintable(text), 'text that can be read')

/** A station's name: `A6`, `P1`, `old 3`. Signs that divide a written place or a list may not stand in it. */
export const stationSchema = lineSchema.max(40, 'a name of at most 40 characters').refine(name => !/[,;+"]|->|→|\s\s|\s(to|towards?|and)\s/i.test(name),
  'a station\'s name such as A6, without comma, semicolon, plus, quote or arrow')

const number = z.number('a number')
const units = [...new Set(Object.values(baseUnit))] as [BaseUnit, ...BaseUnit[]]

/** Shape only; whether the value is what the text says, and within its limits, is checked by checkQuantity. */
export const quantitySchema = z.strictObject({
  text: lineSchema,
  value: number.nullable(),
  unit: z.enum(units),
  from: lineSchema.optional(),
  mark: z.enum(['below', 'above', 'trace', 'nil', 'about']).optional(),
})

const inUnit = (dimension: Dimension) => quantitySchema.refine(q => q.unit === baseUnit[dimension], `a value in ${baseUnit[dimension]}`)
const length = inUnit('length')

export const moneySchema = z.strictObject({
  text: lineSchema,
  amount: number.min(0, 'an amount of zero or more'),
  currency: z.string().regex(/^[A-Z]{3}$/, 'a currency of three letters, such as USD'),
})

export const colourSchema = z.strictObject({
  class: lineSchema,
  count: z.int('a whole number').min(0, 'a count of zero or more'),
  mgEach: number.positive('a mass above zero, in milligrams'),
})

export const groundLineSchema = z.strictObject({
  text: lineSchema,
  line: z.array(z.tuple([number, number])).min(2, 'two points or more').max(200, 'at most 200 points'),
})

export const blobSchema = z.strictObject({
  sha256: z.string().regex(/^[0-9a-f]{64}$/, 'a SHA-256 of 64 hexadecimal digits'),
  type: z.string().regex(/^[a-z]+\/[a-z0-9.+-]+$/, 'a media type such as image/jpeg'),
  bytes: z.int('a whole number').min(0, 'a size of zero or more'),
  name: lineSchema.optional(),
})

const accuracy = number.positive('an accuracy above zero, in metres').optional()
const tape = z.strictObject({ station: stationSchema, distance: length })

export const placeSchema = z.discriminatedUnion('by', [
  z.strictObject({
    by: z.literal('station'), station: stationSchema, toward: stationSchema.optional(), along: length.optional(),
    side: z.enum(sides).optional(), height: length.optional(), accuracy: length.optional(),
  }).refine(place => place.toward !== place.station, { path: ['toward'], error: 'another station than the first' }),
  z.strictObject({ by: z.literal('tapes'), first: tape, second: tape, turn: z.enum(turns).optional(), height: length.optional(), accuracy: length.optional() })
    .refine(place => place.first.station !== place.second.station, { path: ['second', 'station'], error: 'another station than the first' }),
  z.strictObject({ by: z.literal('grid'), east: number, north: number, up: number.optional(), accuracy, text: lineSchema.optional() }),
  z.strictObject({
    by: z.literal('gps'), latitude: number.min(-90, 'a latitude from -90 to 90').max(90, 'a latitude from -90 to 90'),
    longitude: number.min(-180, 'a longitude from -180 to 180').max(180, 'a longitude from -180 to 180'), elevation: number.optional(), accuracy,
    text: lineSchema.optional(),
  }),
  z.strictObject({ by: z.literal('words'), words: lineSchema }),
], 'a place: by station, tapes, grid, GPS or words')
