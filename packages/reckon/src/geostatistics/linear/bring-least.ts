/**
 * Brings the k least of the first `count` keys to the front, with the labels beside them; of equal keys the lower label counts as less.
 * Source: Hoare, C. A. R. (1961) Algorithm 65: find, Comm. ACM 4: 321-322.
 */
export function bringLeast(keys: Float64Array, labels: Int32Array, k: number, count: number): void {
  let low = 0
  let high = count - 1
  while (low < high) {
    const middle = (low + high) >> 1
    const pivot = keys[middle]!
    const pivotLabel = labels[middle]!
    let i = low
    let j = high
    while (i <= j) {
      while (keys[i]! < pivot || (keys[i] === pivot && labels[i]! < pivotLabel)) i++
      while (keys[j]! > pivot || (keys[j] === pivot && labels[j]! > pivotLabel)) j--
      if (i > j) break
      const key = keys[i]!
      const label = labels[i]!
      keys[i] = keys[j]!
      labels[i] = labels[j]!
      keys[j] = key
      labels[j] = label
      i++
      j--
    }
    if (k - 1 <= j) high = j
    else if (k - 1 >= i) low = i
    else return
  }
}
