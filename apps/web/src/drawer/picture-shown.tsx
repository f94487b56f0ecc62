import type { Blob as KeptBlob } from '@lodebook/book'
import { useEffect, useState } from 'preact/hooks'
import { desk } from '../link/desk.ts'

/** A picture kept beside the book, if this device holds it. */
export function PictureShown({ picture }: { readonly picture: KeptBlob }) {
  const [address, setAddress] = useState<string>(), [missing, setMissing] = useState(false)
  useEffect(() => {
    let made: string | undefined
    void desk.getBlob(picture.sha256).then((bytes) => {
      if (!bytes) { setMissing(true); return }
      made = URL.createObjectURL(new Blob([bytes as BlobPart], { type: picture.type }))
      setAddress(made)
    })
    return () => { if (made !== undefined) URL.revokeObjectURL(made) }
  }, [picture.sha256])
  if (missing) return <span class="soft">{picture.name ?? 'A picture'}, not on this device yet</span>
  return address === undefined ? <span class="soft">…</span> : <img class="picture" src={address} alt={picture.name ?? 'Picture'} />
}
