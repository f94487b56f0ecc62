/** Stands beside every figure of gold in the ground. */
export const notResource = 'This is not a mineral resource or reserve under any reporting code; it is a crew\'s own reckoning from its own samples.'

/** Outcomes drawn for every quantity that is counted outcome by outcome. Deciles of so many are good to about a hundredth of their rank. */
export const outcomesDrawn = 1000
