// What the store keeps of pictures of labels.

/** The picture of a label, under the SHA-256 of its bytes (hex). */
export interface Picture {
  readonly sha256: string;
  /** The verdict's entry. */
  readonly of: string;
  readonly untilMs: number;
  readonly bytes: Uint8Array;
}

/** The part of a store that keeps them. */
export interface PictureStore {
  /** Keeps a picture; one that is there stays as it is. */
  readonly putPicture: (picture: Picture) => Promise<void>;
  readonly pictureOf: (entry: string) => Promise<Picture | null>;
}
