/** The mine in three dimensions. */
export function InSpaceScreen() {
  return <h1>The mine in three dimensions</h1>
}
