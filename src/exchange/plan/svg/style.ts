import type { SvgElement } from "./element.ts";
import { lengthOf } from "./lengths.ts";

/** How an element is drawn, its parents' say included. */
export interface SvgStyle {
  readonly line: string;
  readonly fill: string;
  readonly colour: string;
  readonly lineWidth: number;
  readonly lineOpacity: number;
  readonly fillOpacity: number;
  readonly opacity: number;
  readonly fontSize: number;
  readonly anchor: string;
  readonly visible: boolean;
  readonly displayed: boolean;
}

export const initialStyle: SvgStyle = {
  line: "none",
  fill: "#000000",
  colour: "#000000",
  lineWidth: 1,
  lineOpacity: 1,
  fillOpacity: 1,
  opacity: 1,
  fontSize: 16,
  anchor: "start",
  visible: true,
  displayed: true,
};

/** Rules of the style sheets of a file, as far as they name a tag, a class or an id alone. */
export type StyleRules = ReadonlyMap<string, Readonly<Record<string, string>>>;

/** Reads style sheets. Rules for what lies inside something else are passed over, and so is everything behind an @. */
export function rulesOf(styles: string): StyleRules {
  const rules = new Map<string, Record<string, string>>();
  const text = styles.replace(/\/\*[\s\S]*?(\*\/|$)/g, "");
  for (const [, selectors, body] of text.matchAll(/([^{}]+)\{([^{}]*)\}/g)) {
    if (selectors!.includes("@")) continue;
    for (const selector of selectors!.split(",").map((each) => each.trim())) {
      if (!/^(\*|[\w-]*([.#][\w-]+)?)$/.test(selector)) continue;
      rules.set(selector, { ...rules.get(selector), ...declarations(body!) });
    }
  }
  return rules;
}

/** The style of an element under its parent's: attributes first, then style sheets, then its own style. */
export function styleOf(
  element: SvgElement,
  parent: SvgStyle,
  rules: StyleRules,
): { readonly style: SvgStyle; readonly clip: string | undefined } {
  const { attributes, name } = element;
  const said: Record<string, string | undefined> = { ...attributes };
  if (rules.size > 0) {
    const classes = (attributes.class ?? "").split(/\s+/).filter((each) => each !== "");
    const keys = ["*", name, ...classes.flatMap((each) => [`.${each}`, `${name}.${each}`])];
    if (attributes.id !== undefined) keys.push(`#${attributes.id}`, `${name}#${attributes.id}`);
    for (const key of keys) Object.assign(said, rules.get(key));
  }
  if (attributes.style !== undefined) Object.assign(said, declarations(attributes.style));
  const colour = paint(said.color, parent.colour, parent.colour);
  const fontSize = lengthOf(said["font-size"], { whole: parent.fontSize, em: parent.fontSize });
  const style: SvgStyle = {
    colour,
    line: paint(said.stroke, parent.line, colour),
    fill: paint(said.fill, parent.fill, colour),
    lineWidth: lengthOf(said["stroke-width"], { em: parent.fontSize }) ?? parent.lineWidth,
    lineOpacity: share(said["stroke-opacity"]) ?? parent.lineOpacity,
    fillOpacity: share(said["fill-opacity"]) ?? parent.fillOpacity,
    opacity: parent.opacity * (share(said.opacity) ?? 1),
    fontSize: fontSize !== undefined && fontSize > 0 ? fontSize : parent.fontSize,
    anchor: said["text-anchor"] ?? parent.anchor,
    visible: said.visibility === undefined ? parent.visible : said.visibility === "visible",
    displayed: parent.displayed && said.display !== "none",
  };
  return { style, clip: /^url\(\s*["']?#([^"')]+)["']?\s*\)/.exec(said["clip-path"] ?? "")?.[1] };
}

const declarations = (body: string): Record<string, string> => {
  const list: Record<string, string> = {};
  for (const part of body.split(";")) {
    const colon = part.indexOf(":");
    if (colon < 0) continue;
    const value = part.slice(colon + 1).replace(/!important/i, "");
    list[part.slice(0, colon).trim().toLowerCase()] = value.trim();
  }
  return list;
};

const share = (text: string | undefined): number | undefined => {
  if (text === undefined) return undefined;
  const value = Number.parseFloat(text) / (text.trim().endsWith("%") ? 100 : 1);
  return Number.isFinite(value) ? value : undefined;
};

/** A colour as "#rrggbb" where it is a plain one, "none", or the word that stands there. */
const paint = (text: string | undefined, inherited: string, current: string): string => {
  const word = text?.trim().toLowerCase();
  if (word === undefined || word === "" || word === "inherit") return inherited;
  if (word === "currentcolor") return current;
  if (word === "transparent") return "none";
  if (word.startsWith("url(")) return "pattern";
  const short = /^#([0-9a-f])([0-9a-f])([0-9a-f])$/.exec(word);
  if (short) return `#${short[1]}${short[1]}${short[2]}${short[2]}${short[3]}${short[3]}`;
  const rgb = /^rgba?\(\s*([\d.]+)(%?)[\s,]+([\d.]+)%?[\s,]+([\d.]+)%?/.exec(word);
  if (!rgb) return colourWords[word] ?? word.slice(0, 30);
  const part = (digits: string): string => {
    const value = Number(digits) * (rgb[2] === "%" ? 2.55 : 1);
    return Math.round(Math.min(255, value)).toString(16).padStart(2, "0");
  };
  return `#${part(rgb[1]!)}${part(rgb[3]!)}${part(rgb[4]!)}`;
};

const colourWords: Readonly<Record<string, string>> = {
  black: "#000000",
  white: "#ffffff",
  red: "#ff0000",
  green: "#008000",
  lime: "#00ff00",
  blue: "#0000ff",
  yellow: "#ffff00",
  cyan: "#00ffff",
  aqua: "#00ffff",
  magenta: "#ff00ff",
  fuchsia: "#ff00ff",
  gray: "#808080",
  grey: "#808080",
  silver: "#c0c0c0",
  maroon: "#800000",
  olive: "#808000",
  navy: "#000080",
  purple: "#800080",
  teal: "#008080",
  orange: "#ffa500",
};
