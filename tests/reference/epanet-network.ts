import {
  FlowUnits,
  HeadLossType,
  InitHydOption,
  LinkProperty,
  LinkType,
  NodeProperty,
  NodeType,
  Option,
  Project,
  Workspace,
} from 'epanet-js';
import type { Fluid } from '@/lib/hydraulics/elements/element';
import { STANDARD_GRAVITY } from '@/lib/units';
import { addFitting } from './epanet-fitting';
import type { PipeNetwork } from './pipe-network';

/** EPANET's own constants: kinematic viscosity of water (1.1e-5 ft²/s) and gravity (32.2 ft/s²), in SI. */
const EPANET_VISCOSITY = 1.1e-5 * 0.3048 ** 2;
const EPANET_GRAVITY = 32.2 * 0.3048;

/**
 * A network of pipes and fittings held open in EPANET, Darcy–Weisbach, at the finest tolerances it accepts.
 *
 * @source EPANET 2.3.5 (the toolkit of epanet-js 0.9.0, MIT); L. Rossman and others, EPANET 2.2 user manual, EPA 2020.
 */
export class EpanetNetwork {
  private readonly project: Project;
  /** Pipes first, then fittings. */
  private readonly links: readonly number[];
  private readonly nodes: ReadonlyMap<string, number>;

  private constructor(
    workspace: Workspace,
    private readonly network: PipeNetwork,
    private readonly fluid: Fluid,
  ) {
    this.project = new Project(workspace);
    this.project.init('report.rpt', 'out.bin', FlowUnits.LPS, HeadLossType.DW);
    this.setOptions();
    for (const node of network.nodes) this.addNode(node);
    const pipes = network.pipes.map((pipe) => this.addPipe(pipe));
    const scale = { fluid, headOf: (pressure: number) => this.head(pressure, 0) };
    const fittings = (network.fittings ?? []).map((fitting) => addFitting(this.project, fitting, network, scale));
    this.links = [...pipes, ...fittings];
    // Only now: EPANET keeps junctions ahead of held nodes and renumbers those with each junction that is added.
    this.nodes = new Map(network.nodes.map(({ id }) => [id, this.project.getNodeIndex(id)]));
    this.project.openH();
  }

  static async open(network: PipeNetwork, fluid: Fluid): Promise<EpanetNetwork> {
    const workspace = new Workspace();
    await workspace.loadModule();
    return new EpanetNetwork(workspace, network, fluid);
  }

  private setOptions(): void {
    this.project.setOption(Option.SpViscos, this.fluid.viscosity / this.fluid.density / EPANET_VISCOSITY);
    this.project.setOption(Option.Accuracy, 1e-5);
    this.project.setOption(Option.HeadError, 1e-7);
    this.project.setOption(Option.FlowChange, 1e-7);
    this.project.setOption(Option.Trials, 200);
  }

  /** Junctions lie at elevation 0, so that their pressure in EPANET is their head. */
  private addNode({ id, height, pressure }: PipeNetwork['nodes'][number]): void {
    const index = this.project.addNode(id, pressure === undefined ? NodeType.Junction : NodeType.Reservoir);
    const head = pressure === undefined ? 0 : this.head(pressure, height);
    this.project.setNodeValue(index, NodeProperty.Elevation, head);
  }

  private addPipe({ id, from, to, bore, length, roughness, minorLoss }: PipeNetwork['pipes'][number]): number {
    const index = this.project.addLink(id, LinkType.Pipe, from, to);
    this.project.setPipeData(index, length, bore * 1e3, roughness * 1e3, minorLoss);
    return index;
  }

  /** Head in EPANET's gravity, so that its head losses are the same pressures as ours. */
  private head(pressure: number, height: number): number {
    return (pressure / this.fluid.density + STANDARD_GRAVITY * height) / EPANET_GRAVITY;
  }

  private heightOf(node: string): number {
    return this.network.nodes.find(({ id }) => id === node)?.height ?? 0;
  }

  hold(node: string, pressure: number): void {
    const head = this.head(pressure, this.heightOf(node));
    this.project.setNodeValue(this.nodes.get(node) ?? 0, NodeProperty.Elevation, head);
  }

  /** From EPANET's own starting flows. */
  solve(): void {
    this.project.initH(InitHydOption.InitFlow);
    this.project.runH();
  }

  /** Flow of each pipe and then of each fitting, m³/s. */
  flows(): number[] {
    return this.links.map((link) => this.project.getLinkValue(link, LinkProperty.Flow) * 1e-3);
  }

  /** Pascal. */
  pressureAt(node: string): number {
    const head = this.project.getNodeValue(this.nodes.get(node) ?? 0, NodeProperty.Head);
    return this.fluid.density * (head * EPANET_GRAVITY - STANDARD_GRAVITY * this.heightOf(node));
  }

  close(): void {
    this.project.closeH();
    this.project.close();
  }
}
