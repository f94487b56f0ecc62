import type { Degrees } from '../core/index.ts'
import type { Ellipsoid } from './ellipsoids.ts'
import { degrees, radians } from '../core/index.ts'
import { signedAngle } from './angles.ts'

/** Where a transverse Mercator grid touches the earth. Metres, degrees. */
export interface MercatorFrame {
  readonly ellipsoid: Ellipsoid
  /** Longitude of the central meridian. */
  readonly meridian: Degrees
  /** Scale on the central meridian. */
  readonly scale: number
  readonly falseEasting: number
  readonly falseNorthing: number
}

export interface Projected {
  readonly easting: number
  readonly northing: number
  /** Grid north from true north, clockwise: a grid azimuth is the true one less this. */
  readonly convergence: Degrees
  /** Grid distance over distance on the ellipsoid, at the point. */
  readonly scale: number
}

/**
 * Transverse Mercator by Krüger's series in the third flattening to the sixth order.
 * @returns easting and northing from the frame's false origin, with convergence and scale at the point
 * Accuracy: 5 nanometres within 3,900 km of the central meridian (Karney); the caller keeps nearer than that.
 * Source: Karney, 'Transverse Mercator with an accuracy of a few nanometers', J. Geodesy 85 (2011) 475, eqs 7 to 35.
 */
export function project(frame: MercatorFrame, latitude: Degrees, longitude: Degrees): Projected {
  const { ellipsoid: { a, f } } = frame
  const e2 = f * (2 - f)
  const lambda = radians(signedAngle(longitude - frame.meridian))
  const phi = radians(latitude)
  const tau = Math.tan(phi)
  const conformal = conformalTangent(tau, Math.sqrt(e2))
  const cosLambda = Math.cos(lambda)
  const xi = Math.atan2(conformal, cosLambda)
  const eta = Math.asinh(Math.sin(lambda) / Math.hypot(conformal, cosLambda))

  const { rectifying, alpha } = seriesOf(f)
  const sum = sumSeries(alpha, xi, eta)
  const radius = frame.scale * a * rectifying
  const sphereConvergence = Math.atan2(conformal * Math.sin(lambda), cosLambda * Math.hypot(1, conformal))
  const sphereScale = Math.sqrt(1 - e2 + e2 / (1 + tau * tau)) * Math.hypot(1, tau) / Math.hypot(conformal, cosLambda)
  return {
    easting: frame.falseEasting + radius * (eta + sum.eta),
    northing: frame.falseNorthing + radius * (xi + sum.xi),
    convergence: degrees(sphereConvergence + Math.atan2(sum.slopeImaginary, sum.slopeReal)),
    scale: frame.scale * rectifying * Math.hypot(sum.slopeReal, sum.slopeImaginary) * sphereScale,
  }
}

/**
 * The inverse of `project`. Longitude in (-180, 180].
 * Source: as project, eqs 15 to 19 and 36.
 */
export function unproject(frame: MercatorFrame, easting: number, northing: number): { readonly latitude: Degrees, readonly longitude: Degrees } {
  const { ellipsoid: { a, f } } = frame
  const { rectifying, beta } = seriesOf(f)
  const radius = frame.scale * a * rectifying
  const xi = (northing - frame.falseNorthing) / radius
  const eta = (easting - frame.falseEasting) / radius
  const sum = sumSeries(beta, xi, eta)
  const [x, y] = [xi - sum.xi, eta - sum.eta]
  const level = Math.hypot(Math.sinh(y), Math.cos(x))
  const tau = geodeticTangent(Math.sin(x) / level, Math.sqrt(f * (2 - f)), f)
  return { latitude: degrees(Math.atan(tau)), longitude: signedAngle(frame.meridian + degrees(Math.atan2(Math.sinh(y), Math.cos(x)))) }
}

/** Tangent of the conformal latitude from that of the geographic one. */
function conformalTangent(tau: number, e: number): number {
  const sigma = Math.sinh(e * Math.atanh(e * tau / Math.hypot(1, tau)))
  return tau * Math.hypot(1, sigma) - sigma * Math.hypot(1, tau)
}

/** The other way, by Newton's method: three steps reach full double precision from anywhere. */
function geodeticTangent(conformal: number, e: number, f: number): number {
  const e2 = f * (2 - f)
  let tau = conformal
  for (let step = 0; step < 5; step++) {
    const reached = conformalTangent(tau, e)
    tau += (conformal - reached) / Math.hypot(1, reached) * (1 + (1 - e2) * tau * tau) / ((1 - e2) * Math.hypot(1, tau))
  }
  return tau
}

/** Sums of the series and their derivative at a complex point. */
function sumSeries(coefficients: readonly number[], xi: number, eta: number) {
  let [sumXi, sumEta, slopeReal, slopeImaginary] = [0, 0, 1, 0]
  coefficients.forEach((c, i) => {
    const k = 2 * (i + 1)
    const [sin, cos, sinh, cosh] = [Math.sin(k * xi), Math.cos(k * xi), Math.sinh(k * eta), Math.cosh(k * eta)]
    sumXi += c * sin * cosh
    sumEta += c * cos * sinh
    slopeReal += k * c * cos * cosh
    slopeImaginary += k * c * sin * sinh
  })
  return { xi: sumXi, eta: sumEta, slopeReal, slopeImaginary }
}

/** Krüger's coefficients for one flattening: rectifying radius over a, forward and inverse series. */
function seriesOf(f: number) {
  const n = f / (2 - f)
  const [n2, n3, n4, n5, n6] = [n ** 2, n ** 3, n ** 4, n ** 5, n ** 6]
  return {
    rectifying: (1 + n2 / 4 + n4 / 64 + n6 / 256) / (1 + n),
    alpha: [
      n / 2 - n2 * 2 / 3 + n3 * 5 / 16 + n4 * 41 / 180 - n5 * 127 / 288 + n6 * 7891 / 37800,
      n2 * 13 / 48 - n3 * 3 / 5 + n4 * 557 / 1440 + n5 * 281 / 630 - n6 * 1983433 / 1935360,
      n3 * 61 / 240 - n4 * 103 / 140 + n5 * 15061 / 26880 + n6 * 167603 / 181440,
      n4 * 49561 / 161280 - n5 * 179 / 168 + n6 * 6601661 / 7257600,
      n5 * 34729 / 80640 - n6 * 3418889 / 1995840,
      n6 * 212378941 / 319334400,
    ],
    beta: [
      n / 2 - n2 * 2 / 3 + n3 * 37 / 96 - n4 / 360 - n5 * 81 / 512 + n6 * 96199 / 604800,
      n2 / 48 + n3 / 15 - n4 * 437 / 1440 + n5 * 46 / 105 - n6 * 1118711 / 3870720,
      n3 * 17 / 480 - n4 * 37 / 840 - n5 * 209 / 4480 + n6 * 5569 / 90720,
      n4 * 4397 / 161280 - n5 * 11 / 504 - n6 * 830251 / 7257600,
      n5 * 4583 / 161280 - n6 * 108847 / 3991680,
      n6 * 20648693 / 638668800,
    ],
  }
}
