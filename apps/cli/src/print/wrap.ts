/** Columns that a text takes on a terminal. */
export const widthOf = (text: string): number => [...text].length

/** Text broken at words into lines no wider than `room`; a longer word stands alone. Line breaks in the text are kept. */
export function wrap(text: string, room: number): readonly string[] {
  return text.split('\n').flatMap((paragraph) => {
    const lines: string[] = []
    for (const word of paragraph.split(' ')) {
      const line = lines.at(-1)
      if (line === undefined || widthOf(line) + 1 + widthOf(word) > room) lines.push(word)
      else lines[lines.length - 1] = `${line} ${word}`
    }
    return lines
  })
}

/** Text cut short to a width, with a mark where something is left off. */
export const cut = (text: string, width: number): string => widthOf(text) <= width ? text : `${[...text].slice(0, width - 1).join('')}…`
