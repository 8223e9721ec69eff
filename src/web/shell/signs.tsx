const paths = {
  undo: "M7 4 3 8l4 4M3 8h7a4.5 4.5 0 0 1 0 9H8",
  redo: "M11 4l4 4-4 4m4-4H8a4.5 4.5 0 0 0 0 9h2",
  print: "M5 7V3h8v4M5 13H3V7h12v6h-2M5 11h8v5H5z",
  show: "M2 9c2-3.5 4.5-5 7-5s5 1.5 7 5c-2 3.500-4.500 5-7 5S4 12.500 2 9zM9 6.500a2.500 2.500 0 1 0 0 5 2.500 2.500 0 0 0 0-5z",
  plus: "M9 3v12M3 9h12",
  minus: "M3 9h12",
  fit: "M3 7V3h4M11 3h4v4M15 11v4h-4M7 15H3v-4",
  down: "M4 7l5 5 5-5",
  up: "M4 11l5-5 5 5",
  left: "M11 4 6 9l5 5",
  right: "M7 4l5 5-5 5",
  close: "M4 4l10 10M14 4 4 14",
  measure: "M2 12 12 2l4 4L6 16zM5 9l2 2M8 6l2 2",
  menu: "M3 5h12M3 9h12M3 13h12",
} as const;

/** A small drawing of our own on a square of 18. */
export function Sign({ name }: { readonly name: keyof typeof paths }) {
  return (
    <svg className="sign" viewBox="0 0 18 18" aria-hidden="true">
      <path d={paths[name]} />
    </svg>
  );
}
