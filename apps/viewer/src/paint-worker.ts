import { ArtPainter } from './draw/art-painter.ts';
import type { PaintAnswer, PaintQuestion } from './draw/paint-question.ts';

let painter: ArtPainter | null = null;
const canvas = new OffscreenCanvas(1, 1);
const context = canvas.getContext('2d');

addEventListener('message', ({ data }: MessageEvent<PaintQuestion>) => {
  if (data.kind === 'art') {
    painter = new ArtPainter(data.art, data.inks);
    return;
  }
  const { frame } = data;
  const [width, height] = [frame.widthPx * frame.density, frame.heightPx * frame.density].map(Math.round) as [
    number,
    number,
  ];
  if (canvas.width !== width || canvas.height !== height) {
    canvas.width = width;
    canvas.height = height;
  }
  if (context !== null && painter !== null) {
    painter.paint(context, frame);
  }
  const answer: PaintAnswer = { artId: data.artId, frame, bitmap: canvas.transferToImageBitmap() };
  (postMessage as (message: PaintAnswer, transfer: Transferable[]) => void)(answer, [answer.bitmap]);
});
