/** Two rooms of 4 × 3 m side by side, walls of 0.2 m, a doorway of 0.9 m between them, at 1 : 100 in millimetres of paper. */
export const writtenPlan = `<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="80mm" viewBox="0 0 120 80">
<g fill="none" stroke="black" stroke-width="0.3">
<path d="M10 10 H50 V21 M50 30 V40 H10 V10"/>
<path d="M52 10 H92 V40 H52 V30 M52 21 V10"/>
<path d="M50 21 H52 M50 30 H52"/>
<path d="M7 7 H95 V43 H7 Z"/>
</g>
<text x="25" y="25" font-size="3">Store</text><text x="68" y="25" font-size="3">Archive</text>
</svg>`;
