/** What comes back for a picture that was sent. */
export type UploadAnswer = { picture: { id: string; width: number; height: number } } | { error: string };
