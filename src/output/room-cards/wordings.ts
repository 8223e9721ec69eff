import type { PaperLanguage } from "../words/paper-words.ts";

/** All that a card may say. */
export interface CardWording {
  readonly title: string;
  readonly on: string;
  readonly on_automatic: string;
  readonly on_parts: string;
  readonly on_button: string;
  readonly on_byHand: string;
  readonly off: string;
  /** {delay}: how long after the last movement. */
  readonly off_after: string;
  readonly daylight: string;
  readonly daylight_enough: string;
  readonly button: string;
  readonly button_onAndOff: string;
  readonly button_on: string;
  readonly still: string;
  readonly still_move: string;
  readonly call: string;
  readonly never: string;
  /** {count}: a whole number above one. */
  readonly seconds: string;
  readonly minutes: string;
}

export const cardWordings: Readonly<Record<PaperLanguage, CardWording>> = {
  en: {
    title: "Your light",
    on: "On",
    on_automatic: "By itself, when you come in.",
    on_parts: "By itself in parts of the room; elsewhere press the button.",
    on_button: "Press the button when you come in.",
    on_byHand: "Switch it on by hand when you come in.",
    off: "Off",
    off_after: "By itself, {delay} after the last movement was seen.",
    daylight: "Daylight",
    daylight_enough: "While there is enough daylight, it stays off.",
    button: "Button",
    button_onAndOff: "Press: on, or off. After you switched it off it stays off until the room was empty.",
    button_on: "Press: on. It goes off by itself.",
    still: "Sitting still",
    still_move:
      "The detector looks for movement. If the light goes off while you are here, move an arm, and tell us: it can be adjusted.",
    call: "Something wrong? Call",
    never: "Never rely on it where a machine, an alarm or a way out needs the light.",
    seconds: "about {count} seconds",
    minutes: "about {count} minutes",
  },
  de: {
    title: "Ihr Licht",
    on: "Ein",
    on_automatic: "Von selbst, wenn Sie hereinkommen.",
    on_parts: "In Teilen des Raums von selbst; sonst den Taster drücken.",
    on_button: "Beim Hereinkommen den Taster drücken.",
    on_byHand: "Beim Hereinkommen von Hand einschalten.",
    off: "Aus",
    off_after: "Von selbst, {delay} nach der letzten erfassten Bewegung.",
    daylight: "Tageslicht",
    daylight_enough: "Solange das Tageslicht reicht, bleibt es aus.",
    button: "Taster",
    button_onAndOff:
      "Drücken: ein oder aus. Nach dem Ausschalten bleibt es aus, bis der Raum einmal leer war.",
    button_on: "Drücken: ein. Aus geht es von selbst.",
    still: "Ruhig sitzen",
    still_move:
      "Der Melder sucht nach Bewegung. Geht das Licht aus, obwohl Sie da sind: einen Arm bewegen und uns Bescheid sagen, das lässt sich einstellen.",
    call: "Etwas defekt? Anrufen",
    never: "Nie darauf verlassen, wo Maschine, Alarm oder Fluchtweg Licht braucht.",
    seconds: "etwa {count} Sekunden",
    minutes: "etwa {count} Minuten",
  },
  fr: {
    title: "Votre éclairage",
    on: "Allumage",
    on_automatic: "Tout seul, quand vous entrez.",
    on_parts: "Tout seul dans une partie du local ; ailleurs, appuyez sur le bouton.",
    on_button: "Appuyez sur le bouton en entrant.",
    on_byHand: "Allumez à la main en entrant.",
    off: "Extinction",
    off_after: "Toute seule, {delay} après le dernier mouvement détecté.",
    daylight: "Lumière du jour",
    daylight_enough: "Tant que la lumière du jour suffit, il reste éteint.",
    button: "Bouton",
    button_onAndOff:
      "Appui : allumer ou éteindre. Une fois éteint à la main, il le reste jusqu’à ce que le local ait été vide.",
    button_on: "Appui : allumer. L’extinction est automatique.",
    still: "Assis sans bouger",
    still_move:
      "Le détecteur cherche du mouvement. Si la lumière s’éteint alors que vous êtes là, bougez un bras, et dites-le-nous : cela se règle.",
    call: "Un problème ? Appelez",
    never: "N’y comptez jamais pour une machine, une alarme, une issue de secours.",
    seconds: "environ {count} secondes",
    minutes: "environ {count} minutes",
  },
  es: {
    title: "Su luz",
    on: "Encendido",
    on_automatic: "Sola, cuando usted entra.",
    on_parts: "Sola en parte del local; en el resto, pulse el botón.",
    on_button: "Pulse el botón al entrar.",
    on_byHand: "Enciéndala a mano al entrar.",
    off: "Apagado",
    off_after: "Sola, {delay} después del último movimiento visto.",
    daylight: "Luz natural",
    daylight_enough: "Mientras haya bastante luz natural, queda apagada.",
    button: "Botón",
    button_onAndOff:
      "Pulsar: encender o apagar. Si la apaga usted, queda apagada hasta que el local haya estado vacío.",
    button_on: "Pulsar: encender. Se apaga sola.",
    still: "Sentado sin moverse",
    still_move:
      "El detector busca movimiento. Si la luz se apaga estando usted aquí, mueva un brazo y avísenos: se puede ajustar.",
    call: "¿Algo va mal? Llame a",
    never: "No confíe nunca en ella para una máquina, una alarma o una salida.",
    seconds: "unos {count} segundos",
    minutes: "unos {count} minutos",
  },
};
