using AutoSweep.Core.Generator;
using AutoSweep.Core.Quantities;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Network;

namespace AutoSweep.Sim.Physics;

/// <summary>The generator on the bench: what each terminal gives at a time, with what is in its filter.</summary>
internal sealed class GeneratorModel
{
    private readonly BenchDefinition bench;
    private readonly GeneratorProfile profile;
    private readonly Dictionary<int, OutputDefinition> outputs;
    private readonly Dictionary<int, OutputNetwork> networks;
    private readonly Dictionary<int, GeneratorOutput> wheels;
    private readonly ILookup<int, PlantedFault> faults;
    private readonly Dictionary<int, MagnetRodState> rods;

    public GeneratorModel(BenchDefinition bench, GeneratorProfile profile)
    {
        (this.bench, this.profile) = (bench, profile);
        outputs = bench.Outputs.ToDictionary(output => output.Number);
        networks = bench.Outputs.ToDictionary(output => output.Number, output => new OutputNetwork(output, bench.FrontEnd));
        wheels = profile.Outputs.ToDictionary(output => output.Number);
        rods = bench.Outputs.Where(output => output.Rod is not null).ToDictionary(output => output.Number, output => new MagnetRodState(output.Rod!));
        faults = bench.Faults.ToLookup(fault => fault.Output);
    }

    /// <summary>The part of the mains' and the warm-up's state that counts for one signal.</summary>
    public readonly record struct Conditions(double MainsHertz, double WarmUp, double? Periods = null)
    {
        public double RelativeSpeed(double nominalHertz) => MainsHertz / nominalHertz;
    }

    /// <summary>The wheels behind a terminal: its own, or another's where two terminals are swapped.</summary>
    public int WiredTo(int terminal)
    {
        var fault = bench.Faults.FirstOrDefault(fault =>
            fault.Kind == FaultKind.Swapped && (fault.Output == terminal || fault.Partner == terminal));
        return fault is null ? terminal : fault.Output == terminal ? fault.Partner!.Value : fault.Output;
    }

    public OutputDefinition Output(int number) => outputs[number];

    public bool HasFilter(int number) => outputs.TryGetValue(number, out var output) && output.Filter is not null;

    /// <summary>The magnet rod before an output's wheel, or none.</summary>
    public MagnetRodState? RodOf(int number) => rods.GetValueOrDefault(number);

    public OutputNetwork Network(int number) => networks[number];

    public double ToneHertz(int number, double mainsHertz) =>
        profile.ToneOf(wheels[number], new Frequency(mainsHertz * MotorInStep)).Hertz;

    /// <summary>What a terminal gives into the front end, before its gain.</summary>
    /// <param name="terminal">The terminal that is clipped.</param>
    /// <param name="farads">The capacitance in the filter, if the output has one.</param>
    /// <param name="lossTangent">Its loss tangent.</param>
    /// <param name="now">Mains and warm-up.</param>
    public InputSignal At(int terminal, double farads, double lossTangent, Conditions now)
    {
        var number = WiredTo(terminal);
        var output = outputs[number];
        var tone = ToneHertz(number, now.MainsHertz);
        return new InputSignal
        {
            ToneVolts = Has(number, FaultKind.Dead) || Has(number, FaultKind.HumOnly)
                ? 0
                : (RodOf(number)?.Gain ?? 1) * EmfVolts(output, now) * networks[number].Transfer(tone, farads, lossTangent).Magnitude,
            ToneHertz = tone,
            HumVolts = Has(number, FaultKind.Dead) ? 0 : output.HumMillivolts * 1e-3,
            HumHertz = now.MainsHertz,
            CrosstalkVolts = Has(number, FaultKind.Dead) ? 0 : Crosstalk(output, farads, lossTangent, now),
            NoiseVolts = bench.FrontEnd.NoiseMicrovolts * 1e-6,
            Wheel = new(output.WobblePercent / 100, tone / wheels[number].WheelTeeth, now.Periods * tone / now.MainsHertz / wheels[number].WheelTeeth),
            Fault = faults[number].Where(fault => fault.Kind == FaultKind.Unsteady)
                .Select(fault => new Swing(fault.SwingPercent / 100, fault.SwingHertz)).FirstOrDefault(),
        };
    }

    private double MotorInStep => 1 - (bench.Mains.SlipPercent / 100);

    private bool Has(int number, FaultKind kind) => faults[number].Any(fault => fault.Kind == kind);

    // Induction: the emf is in proportion to the wheel's speed.
    private double EmfVolts(OutputDefinition output, Conditions now) =>
        output.Source.EmfMillivolts * 1e-3 * MotorInStep * now.RelativeSpeed(profile.MainsHertz) * now.WarmUp;

    private double Crosstalk(OutputDefinition output, double farads, double lossTangent, Conditions now) =>
        output.Crosstalk is not { } leak
            ? 0
            : leak.Percent / 100 * EmfVolts(outputs[leak.FromOutput], now)
                * networks[output.Number].Transfer(ToneHertz(leak.FromOutput, now.MainsHertz), farads, lossTangent).Magnitude;
}
