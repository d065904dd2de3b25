import type { EllipseArc } from '../flatten/flatten-ellipse-arc.ts';

/**
 * The arc of SVG's `A` command by its centre (SVG 2, appendix B.2: conversion from endpoint to centre
 * parametrization, radii out of range scaled up), or `undefined` where the command draws a straight line (a
 * radius of 0) or nothing (start = end).
 *
 * @param rotationDeg rotation of the ellipse's x axis, from +x towards +y
 */
export function arcSegment(
  x0: number,
  y0: number,
  rxIn: number,
  ryIn: number,
  rotationDeg: number,
  largeArc: boolean,
  sweep: boolean,
  x: number,
  y: number,
): EllipseArc | undefined {
  let rx = Math.abs(rxIn);
  let ry = Math.abs(ryIn);
  if (rx === 0 || ry === 0 || (x0 === x && y0 === y)) {
    return undefined;
  }
  const phi = ((rotationDeg % 360) * Math.PI) / 180;
  const cos = Math.cos(phi);
  const sin = Math.sin(phi);
  // half the chord in the ellipse's own axes, as parts of the radii: a point of the unit disc
  let hx = (cos * (x0 - x) + sin * (y0 - y)) / 2 / rx;
  let hy = (cos * (y0 - y) - sin * (x0 - x)) / 2 / ry;
  const size = Math.hypot(hx, hy);
  if (size > 1) {
    rx *= size;
    ry *= size;
    hx /= size;
    hy /= size;
  }
  const square = hx * hx + hy * hy;
  if (!(square > 0) || !Number.isFinite(rx) || !Number.isFinite(ry)) {
    return undefined;
  }
  const k = (largeArc === sweep ? -1 : 1) * Math.sqrt(Math.max(0, 1 - square) / square);
  // centre in units of the radii, with the chord's middle at the origin
  const ex = k * hy;
  const ey = -k * hx;
  const start = Math.atan2(hy - ey, hx - ex);
  let turn = Math.atan2(-hy - ey, -hx - ex) - start;
  if (sweep && turn <= 0) {
    turn += 2 * Math.PI;
  } else if (!sweep && turn >= 0) {
    turn -= 2 * Math.PI;
  }
  return {
    cx: (x0 + x) / 2 + cos * rx * ex - sin * ry * ey,
    cy: (y0 + y) / 2 + sin * rx * ex + cos * ry * ey,
    ux: cos * rx,
    uy: sin * rx,
    vx: -sin * ry,
    vy: cos * ry,
    start,
    end: start + turn,
  };
}
