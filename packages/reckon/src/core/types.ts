declare const brand: unique symbol

/** An angle in degrees. Public functions speak degrees, as field books do. */
export type Degrees = number & { readonly [brand]?: 'degrees' }
/** An angle in radians; only inside a computation. */
export type Radians = number & { readonly [brand]: 'radians' }

/** A point or a vector [east, north, up] in the book's grid. Lengths are metres unless a function says that any unit will do. */
export type Enu = readonly [east: number, north: number, up: number]

/** A symmetric 3 x 3 matrix by rows, east, north, up; of a point's covariance, the square of its length unit. */
export type Matrix3 = readonly [Enu, Enu, Enu]

/** A point in the plane of a vein: along strike (right-hand rule) and down dip, metres. Not to be mixed with grid points. */
export interface VeinPoint { readonly along: number, readonly down: number }

/** A range that holds the true value with the stated probability. */
export interface Range { readonly low: number, readonly high: number, readonly confidence: number }

export const radians = (degrees: Degrees): Radians => degrees * Math.PI / 180 as Radians
export const degrees = (radians: Radians | number): Degrees => radians * 180 / Math.PI
