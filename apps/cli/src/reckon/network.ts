import type { NetworkResult, NetworkShot, ShotReading } from '@lodebook/reckon/survey'
import { adjustNetwork, errorEllipse } from '@lodebook/reckon/survey'
import { azimuthFrom } from '@lodebook/reckon/units'
import { z } from 'zod'
import { reckoning } from './define.ts'

const azimuth = z.union([z.number().min(0).max(360), z.string()], 'degrees from 0 to 360, or text as in a field book such as "S68-05-35W"')
const inclination = z.number().min(-90).max(90)
const point = z.tuple([z.number(), z.number(), z.number()])
const some = z.number().positive()
const sigma = some.optional()

/** What a reading is called at the prompt. */
const readingNames = { distance: 'length', azimuth: 'azimuth', backAzimuth: 'back_azimuth', inclination: 'inclination', backInclination: 'back_inclination' } as const
const byName = new Map(Object.entries(readingNames).map(([reading, name]) => [name, reading as ShotReading]))

const schema = z.strictObject({
  shots: z.array(z.strictObject({
    from: z.string().min(1), to: z.string().min(1), length: some, azimuth, inclination,
    back_azimuth: azimuth.optional(), back_inclination: inclination.optional(), sigma_length: sigma, sigma_angle_deg: sigma,
    leave_out: z.union([z.literal('shot'), z.array(z.enum(['length', 'azimuth', 'back_azimuth', 'inclination', 'back_inclination']))]).optional(),
  })),
  fixed: z.record(z.string().min(1), point),
  ties: z.array(z.strictObject({ station: z.string().min(1), point, sigma: z.union([some, z.tuple([some, some, some])]) })).optional(),
})

export const network = reckoning('network', 'Least squares over a whole survey in three dimensions; readings that disagree are named',
  schema,
  {
    shots: [
      { from: 'P', to: 'A1', length: 12.4, azimuth: 41.5, inclination: 1, back_azimuth: 222 },
      { from: 'A1', to: 'A2', length: 9.85, azimuth: 47, inclination: 0.5, back_azimuth: 226.5 },
      { from: 'A2', to: 'A3', length: 8.1, azimuth: 139, inclination: -2, back_azimuth: 329 },
      { from: 'A3', to: 'P', length: 22.9, azimuth: 244.9, inclination: 0.1, back_azimuth: 64.5 },
    ],
    fixed: { P: [1000, 2000, 1850] },
  },
  ({ shots, fixed, ties = [] }) => {
    const result = adjustNetwork({
      shots: shots.map(shotOf),
      ties: [...Object.entries(fixed).map(([station, at]) => ({ station, point: at })), ...ties],
    })
    return written(result, shots)
  })

type WrittenShot = z.output<typeof schema>['shots'][number]

function shotOf(shot: WrittenShot, i: number): NetworkShot {
  const { from, to, length, sigma_length: lengthSigma, sigma_angle_deg: angleSigma, leave_out: leaveOut } = shot
  const degrees = (value: number | string | undefined, name: string) => typeof value === 'string' ? azimuthFrom(value, `shots[${i}].${name}`) : value
  return {
    from, to, distance: length, inclination: shot.inclination, backInclination: shot.back_inclination,
    azimuth: degrees(shot.azimuth, 'azimuth'), backAzimuth: degrees(shot.back_azimuth, 'back_azimuth'),
    // A stated sigma is the whole of it: nothing grows with length or is added for centring.
    precision: {
      ...lengthSigma !== undefined && { distance: lengthSigma, distancePerLength: 0, centring: 0 },
      ...angleSigma !== undefined && { azimuth: angleSigma, inclination: angleSigma, levelling: angleSigma, centring: 0 },
    },
    leaveOut: leaveOut === undefined || leaveOut === 'shot' ? leaveOut : leaveOut.map(name => byName.get(name)!),
  }
}

function written(result: NetworkResult, shots: readonly WrittenShot[]) {
  const named = ({ shot, tie, reading }: { shot?: number, tie?: number, reading: string }) => ({
    ...shot === undefined ? { tie } : { shot, from: shots[shot]!.from, to: shots[shot]!.to },
    reading: reading in readingNames ? readingNames[reading as ShotReading] : reading,
  })
  const placed = (stations: NetworkResult['stations']) => Object.fromEntries([...stations].map(([name, { point: [east, north, up], sigma: spread, covariance }]) =>
    [name, { east, north, up, sigma: spread, covariance, ellipse_95: errorEllipse(covariance, 0.95) }]))
  return {
    stations: placed(result.stations),
    residuals: result.readings.map(({ observed, residual, sigma: spread, redundancy, w, detectable, leftOut, ...reading }) =>
      ({ ...named(reading), observed, residual, sigma: spread, redundancy, w, detectable, left_out: leftOut })),
    suspects: result.suspects.map(({ blunder, w, alternatives, says, ...reading }) =>
      ({ ...named(reading), blunder, w, alternatives: alternatives.map(({ w: otherW, ...other }) => ({ ...named(other), w: otherW })), says })),
    test: { chi_square: result.test.chiSquare, redundancy: result.test.redundancy, variance_factor: result.test.varianceFactor, p: result.test.p },
    floating: placed(result.floating), undetermined: result.undetermined,
    parts: result.parts.map(({ chiSquare, ...part }) => ({ ...part, chi_square: chiSquare })),
    converged: result.converged, iterations: result.iterations, cautions: result.cautions,
  }
}
