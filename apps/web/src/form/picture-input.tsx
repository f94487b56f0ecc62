import type { Blob as KeptBlob } from '@lodebook/book'
import { useState } from 'preact/hooks'
import { desk } from '../link/desk.ts'

/** A picture from the camera or the device, kept beside the book and named by its SHA-256. */
export function PictureInput({ id, text, onText }: { readonly id: string, readonly text: string, readonly onText: (text: string) => void }) {
  const [says, setSays] = useState(text === '' ? '' : 'A picture is kept')
  const take = async (file: File) => {
    setSays('Keeping it…')
    const bytes = new Uint8Array(await file.arrayBuffer())
    const kept: KeptBlob = { sha256: await desk.putBlob(bytes), type: file.type || 'application/octet-stream', bytes: bytes.length, name: file.name }
    onText(JSON.stringify(kept))
    setSays(`Kept: ${file.name}, ${Math.ceil(bytes.length / 1024)} kB`)
  }
  return (
    <>
      <input
        id={id}
        type="file"
        accept="image/*"
        class="box"
        onChange={(e) => {
          const file = e.currentTarget.files?.[0]
          if (file) take(file).catch(() => setSays('It could not be kept: the device may be full'))
        }}
      />
      <output class="echo">{says}</output>
    </>
  )
}
