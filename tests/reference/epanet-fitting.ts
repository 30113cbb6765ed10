import { LinkProperty, LinkType, NodeType, type Project } from 'epanet-js';
import type { Fluid } from '@/lib/hydraulics/elements/element';
import type { CheckValveFitting, Fitting, PipeNetwork, PumpFitting, RegulatorFitting } from './pipe-network';

/** How pressures of the fluid become EPANET's heads. */
export interface HeadScale {
  fluid: Fluid;
  headOf(pressure: number): number;
}

type Ends = { id: string; from: string; to: string };
/** Bore of the links that stand in for fittings, mm. */
const BORE = 50;
/** EPANET takes no roughness of zero; mm. */
const SMOOTH = 1e-6;

/** Puts a fitting in as what EPANET has for it, and returns the link that carries its flow. */
export function addFitting(project: Project, fitting: Fitting, network: PipeNetwork, scale: HeadScale): number {
  switch (fitting.kind) {
    case 'pump':
      return addPump(project, fitting, scale);
    case 'regulator':
      return addRegulator(project, fitting, network, scale);
    case 'check-valve':
      return addCheckValve(project, fitting, scale);
  }
}

/**
 * A head curve through shutoff, middle and free flow, which EPANET fits by H = A − B·Qᶜ: with three points in line C is 1
 * and the fit exact. Its speed setting moves the curve by the affinity laws.
 */
function addPump(project: Project, { id, from, to, freeFlow, deadHead, speed }: PumpFitting & Ends, scale: HeadScale) {
  const index = project.addLink(id, LinkType.Pump, from, to);
  const [litres, head] = [freeFlow * 1e3, scale.headOf(deadHead)];
  project.addCurve(id);
  project.setCurve(project.getCurveIndex(id), [0, litres / 2, litres], [head, head / 2, 0]);
  project.setHeadCurveIndex(index, project.getCurveIndex(id));
  project.setLinkValue(index, LinkProperty.InitSetting, speed);
  return index;
}

/**
 * A pressure sustaining valve holds what is ahead of it at the set pressure or shuts; a laminar pipe ahead of that makes
 * the override line, whose resistance is Hagen–Poiseuille's, 128·μ·L / (π·D⁴). EPANET wants a pipe between such a valve
 * and a held node; this one is wide and short.
 */
function addRegulator(
  project: Project,
  { id, from, to, set, override }: RegulatorFitting & Ends,
  { nodes }: PipeNetwork,
  { fluid, headOf }: HeadScale,
): number {
  const outlet = nodes.find((node) => node.id === to)?.pressure ?? Number.NaN;
  const length = (override * Math.PI * (BORE * 1e-3) ** 4) / (128 * fluid.viscosity);
  for (const node of [`${id}-seat`, `${id}-spill`]) project.addNode(node, NodeType.Junction);
  project.setPipeData(project.addLink(`${id}-line`, LinkType.Pipe, from, `${id}-seat`), length, BORE, SMOOTH, 0);
  const valve = project.addLink(id, LinkType.PSV, `${id}-seat`, `${id}-spill`);
  project.setLinkValue(valve, LinkProperty.Diameter, BORE);
  project.setLinkValue(valve, LinkProperty.InitSetting, headOf(outlet + set));
  project.setPipeData(project.addLink(`${id}-end`, LinkType.Pipe, `${id}-spill`, to), 0.01, BORE, SMOOTH, 0);
  return valve;
}

/**
 * A pipe with a check valve, too short to rub, whose minor loss is the orifice: K = (A_pipe / (K_orifice·A))². The spring
 * is a pressure breaker valve, which takes a fixed loss.
 */
function addCheckValve(
  project: Project,
  { id, from, to, crack, area, flowCoefficient }: CheckValveFitting & Ends,
  { headOf }: HeadScale,
): number {
  project.addNode(`${id}-spring`, NodeType.Junction);
  const pipeArea = (Math.PI / 4) * (BORE * 1e-3) ** 2;
  const index = project.addLink(id, LinkType.CVPipe, from, `${id}-spring`);
  project.setPipeData(index, 1e-3, BORE, SMOOTH, (pipeArea / (flowCoefficient * area)) ** 2);
  const spring = project.addLink(`${id}-crack`, LinkType.PBV, `${id}-spring`, to);
  project.setLinkValue(spring, LinkProperty.Diameter, BORE);
  project.setLinkValue(spring, LinkProperty.InitSetting, headOf(crack));
  return index;
}
