using AutoSweep.Core.Generator;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Network;

namespace AutoSweep.Sim.Making;

/// <summary>Makes a bench of a generator profile: the same order gives the same bench, figure by figure.</summary>
internal sealed class BenchMaker
{
    private readonly BenchOrder order;
    private readonly GeneratorProfile profile;
    private readonly Random random;
    private readonly NetworkRecipe recipe;

    public BenchMaker(BenchOrder order, GeneratorProfile profile)
    {
        (this.order, this.profile, random) = (order, profile, new Random(order.Seed));
        recipe = new(random);
    }

    public (BenchDefinition Bench, CalibrationSheet Calibration) Make()
    {
        var frontEnd = FrontEnd();
        var arrangements = Arrangements();
        var families = profile.FilteredOutputs.Select(output => output.Group).Distinct()
            .ToDictionary(group => group, _ => new FilterFamily(Between(6, 19), 1 + (Between(-0.5, 0.5) * order.SpreadPercent / 100)));
        var outputs = profile.Outputs.Select(output => Output(output, arrangements, families, frontEnd)).ToList();
        var fixture = FixtureParts.Draw(order.Name, random);
        // A stream of its own, so that a bench with a drawer is in all else the bench without.
        var drawer = new Random(order.Seed + 1);
        var rods = new Random(order.Seed + 2);
        var bench = new BenchDefinition
        {
            Format = 1,
            Name = order.Name,
            About = order.About,
            Seed = order.Seed,
            Profile = order.Profile,
            Mains = new() { Hertz = profile.MainsHertz, WanderPercent = 0.02, WanderSeconds = 60 },
            WarmUp = new() { StartPercent = -1.5, Seconds = 600 },
            FrontEnd = frontEnd,
            Meter = Meter(),
            CapacitanceMeter = DrawerParts.Meter(order.Name, drawer),
            Fixture = fixture,
            Hands = HandsScripts.Draw(outputs, order.Trouble, random),
            Faults = order.Trouble ? Faults() : [],
            Parts = DrawerParts.Draw(order.Parts, drawer),
            Outputs = [.. outputs.Zip(profile.Outputs, (output, wheel) => output with { Rod = RodParts.Draw(wheel.WheelTeeth, rods) })],
            Truth = new() { Outputs = [], Faults = [] },
        };
        return (bench with { Truth = OutputTruths.Of(bench, profile) }, FixtureParts.Measured(fixture, random));
    }

    private OutputDefinition Output(
        GeneratorOutput output, Dictionary<int, Arrangement> arrangements, Dictionary<string, FilterFamily> families,
        FrontEndDefinition frontEnd)
    {
        var level = (output.ExpectedMillivolts ?? Between(3.5, 9)) * Math.Pow(10, Between(-1.5, 1.5) / 20);
        var drawn = new OutputDefinition
        {
            Number = output.Number,
            Source = recipe.Coil(),
            HumMillivolts = Math.Round(level * Between(0.004, 0.02), 5),
            WobblePercent = Math.Round(Between(0.3, 2), 3),
            Crosstalk = Neighbour(output.Number) is { } from
                ? new() { FromOutput = from, Percent = Math.Round(Between(0.1, 0.6), 3) }
                : null,
        };
        if (output.Capacitor is { } capacitor)
            drawn = Filtered(drawn, output, capacitor, arrangements[output.Number], families[output.Group]);
        return drawn with { Source = drawn.Source with { EmfMillivolts = NetworkRecipe.Round(level / Gain(drawn, output, frontEnd)) } };
    }

    private OutputDefinition Filtered(
        OutputDefinition drawn, GeneratorOutput output, FilterCapacitor capacitor, Arrangement arrangement, FilterFamily family)
    {
        var farads = capacitor.ExpectedPicofarads * 1e-12 * family.Offset * (1 + (Between(-0.5, 0.5) * order.SpreadPercent / 100));
        var q = Math.Clamp(family.Q * Between(0.7, 1.35), 4.5, 23);
        var (source, filter) = recipe.Draw(arrangement, profile.ToneOf(output).Hertz, farads, q);
        return drawn with
        {
            Source = source,
            Filter = filter,
            Aged = new()
            {
                // Wax-paper capacitors rise by up to 100 % (trade data); most by less.
                Picofarads = Math.Round(capacitor.ExpectedPicofarads * (1.02 + Math.Pow(Between(0, 1), 2))),
                LossTangent = Math.Round(Between(0.01, 0.06), 4),
            },
        };
    }

    private double Gain(OutputDefinition drawn, GeneratorOutput output, FrontEndDefinition frontEnd)
    {
        var (network, hertz) = (new OutputNetwork(drawn, frontEnd), profile.ToneOf(output).Hertz);
        return drawn.Filter is null
            ? network.Transfer(hertz, 0, 0).Magnitude
            : network.Response(hertz, FixtureParts.LossTangent).Peak()?.Gain
                ?? throw new InvalidOperationException($"Output {output.Number} has no peak.");
    }

    private Dictionary<int, Arrangement> Arrangements()
    {
        var numbers = profile.FilteredOutputs.ToDictionary(output => output.Number, output => output.Capacitor!.Law switch
        {
            ResponseLaw.Shunt => Arrangement.Shunt,
            ResponseLaw.General => Arrangement.Tapped,
            _ => Arrangement.Series,
        });
        var mixed = numbers.Where(pair => pair.Value != Arrangement.Tapped).Select(pair => pair.Key).ToArray();
        random.Shuffle(mixed);
        foreach (var number in mixed.Take(order.Coupled)) numbers[number] = Arrangement.Coupled;
        foreach (var number in mixed.Skip(order.Coupled).Take(order.Tapped)) numbers[number] = Arrangement.Tapped;
        return numbers;
    }

    // Wheels of four octaves' distance turn on one shaft, unscreened from each other (trade data).
    private int? Neighbour(int number)
    {
        var partner = number > 48 ? number - 48 : number + 48;
        return profile.Outputs.Any(output => output.Number == partner) ? partner : null;
    }

    private IReadOnlyList<PlantedFault> Faults()
    {
        var plain = profile.Outputs.Where(output => output.Capacitor is null).Select(output => output.Number).ToArray();
        return
        [
            new() { Output = plain[plain.Length / 6], Kind = FaultKind.Dead },
            new() { Output = plain[plain.Length / 3], Kind = FaultKind.HumOnly },
            new() { Output = plain[plain.Length / 2], Kind = FaultKind.Swapped, Partner = plain[(plain.Length / 2) + 1] },
            new() { Output = plain[plain.Length * 3 / 4], Kind = FaultKind.Unsteady, SwingPercent = 12, SwingHertz = 0.7 },
        ];
    }

    private FrontEndDefinition FrontEnd() => new()
    {
        Gain = order.Gain,
        InputOhms = 1e6,
        InputPicofarads = Math.Round(Between(150, 300)),
        NoiseMicrovolts = 4,
        OpenHumMillivolts = Math.Round(Between(0.1, 0.25), 3),
        ContactMillivolts = 8,
    };

    private MeterDefinition Meter() => new()
    {
        Identity = "AutoSweep,Simulated bench meter,SIM-M-" + order.Name + ",1.0",
        GainErrorPercent = Math.Round(Between(-0.05, 0.05), 4),
        NoisePercentOfReading = 0.25,
        NoisePercentOfRange = 0.002,
        LowLevelErrorPercentOfRange = Math.Round(Between(-0.05, 0.05), 4),
        CountsPerRange = 1e6,
        CounterThresholdMillivolts = 10,
    };

    private double Between(double least, double most) => least + ((most - least) * random.NextDouble());

    /// <summary>What the filters of one group share: about a Q, and by what factor they peak off the maker's value.</summary>
    private readonly record struct FilterFamily(double Q, double Offset);
}
