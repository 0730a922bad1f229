/** A loudspeaker with its waves, or crossed out. */
export const SpeakerGlyph = ({ on }: { on: boolean }) => (
  <svg class="glyph" viewBox="0 0 20 20" width="20" height="20" aria-hidden="true" focusable="false">
    <path class="g-line" d="M3 8v4h3l4 3.5v-11L6 8z" />
    {on ? <path class="g-line" d="M12.5 7.5a4 4 0 0 1 0 5M14.8 5a7.2 7.2 0 0 1 0 10" /> : <path class="g-line" d="m13 8 4.5 4.5M17.5 8 13 12.5" />}
  </svg>
);
