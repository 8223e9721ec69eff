import PDFDocument from "pdfkit";

/** A PDF file that a test draws with the given pen; 600 by 400 points, one page unless the pen adds more. */
export function writtenPdf(
  draw: (pen: PDFKit.PDFDocument) => void,
  options: PDFKit.PDFDocumentOptions = {},
): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const pen = new PDFDocument({
      size: [600, 400],
      margin: 0,
      compress: false,
      info: { CreationDate: new Date(0) },
      ...options,
    });
    const parts: Buffer[] = [];
    pen.on("data", (part: Buffer) => parts.push(part));
    pen.on("end", () => resolve(new Uint8Array(Buffer.concat(parts))));
    pen.on("error", reject);
    draw(pen);
    pen.end();
  });
}

/** A PDF file put together by hand: one page of the given content, with what its dictionary is to say besides. */
export function rawPdf(
  content: string,
  parts: { page?: string; resources?: string; objects?: readonly string[] } = {},
): Uint8Array {
  const objects = [
    "<< /Type /Catalog /Pages 2 0 R >>",
    "<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
    `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 600 400] /Contents 4 0 R /Resources << ${parts.resources ?? ""} >> ${parts.page ?? ""} >>`,
    `<< /Length ${content.length} >>\nstream\n${content}\nendstream`,
    ...(parts.objects ?? []),
  ];
  let text = "%PDF-1.6\n";
  const offsets = objects.map((object, i) => {
    const at = text.length;
    text += `${i + 1} 0 obj\n${object}\nendobj\n`;
    return at;
  });
  const table = text.length;
  text += `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n`;
  text += offsets.map((at) => `${String(at).padStart(10, "0")} 00000 n \n`).join("");
  text += `trailer\n<< /Size ${objects.length + 1} /Root 1 0 R >>\nstartxref\n${table}\n%%EOF\n`;
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
}
