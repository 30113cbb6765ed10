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
import type { PipeNetwork } from './pipe-network';

/** EPANET's own constants: kinematic viscosity of water (1.1e-5 ft²/s) and gravity (32.2 ft/s²), in SI. */
const EPANET_VISCOSITY = 1.1e-5 * 0.3048 ** 2;
const EPANET_GRAVITY = 32.2 * 0.3048;

/** A pipe network held open in EPANET, Darcy–Weisbach, at the finest tolerances it accepts. */
export class EpanetNetwork {
  private readonly project: Project;
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
    this.nodes = new Map(network.nodes.map((node) => [node.id, this.addNode(node)]));
    this.links = network.pipes.map((pipe) => this.addPipe(pipe));
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

  private addNode({ id, height, pressure }: PipeNetwork['nodes'][number]): number {
    const index = this.project.addNode(id, pressure === undefined ? NodeType.Junction : NodeType.Reservoir);
    const head = pressure === undefined ? 0 : this.head(pressure, height);
    this.project.setNodeValue(index, NodeProperty.Elevation, head);
    return index;
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

  hold(node: string, pressure: number): void {
    const height = this.network.nodes.find(({ id }) => id === node)?.height ?? 0;
    this.project.setNodeValue(this.nodes.get(node) ?? 0, NodeProperty.Elevation, this.head(pressure, height));
  }

  /** From EPANET's own starting flows. */
  solve(): void {
    this.project.initH(InitHydOption.InitFlow);
    this.project.runH();
  }

  /** Flow of each pipe, m³/s. */
  flows(): number[] {
    return this.links.map((link) => this.project.getLinkValue(link, LinkProperty.Flow) * 1e-3);
  }

  close(): void {
    this.project.closeH();
    this.project.close();
  }
}
