import type { Quantity } from '@lodebook/reckon/units'
import type { Place } from './place.ts'

export interface Money { readonly text: string, readonly amount: number, readonly currency: string }
/** Gold grains of one size class seen in a pan; `mgEach` is what one such grain weighs. */
export interface Colour { readonly class: string, readonly count: number, readonly mgEach: number }
/** A ground line across the work: distance across and height, metres, as `text` says. */
export interface GroundLine { readonly text: string, readonly line: readonly (readonly [across: number, height: number])[] }
export interface Blob { readonly sha256: string, readonly type: string, readonly bytes: number, readonly name?: string }

/** What a field can hold. */
export type FieldValue = string | number | boolean | readonly string[] | Quantity | Money | Place | readonly Place[] | readonly Colour[] | GroundLine | Blob
export type Fields = Readonly<Record<string, FieldValue>>
