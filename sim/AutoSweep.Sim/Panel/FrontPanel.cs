using System.Globalization;
using AutoSweep.Core.Quantities;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Hands;
using AutoSweep.Sim.Meter;
using AutoSweep.Sim.Physics;

namespace AutoSweep.Sim.Panel;

/// <summary>The bench for a person without any wire: what the hands do is typed, what the eye sees is printed.</summary>
internal sealed class FrontPanel
{
    public const string Help =
        "clip 51          clips the meter to output 51\n"
        + "clip 51 box      and the decade box in the place of its capacitor\n"
        + "off              takes the clips off\n"
        + "dial 104.3n      turns the box's dials\n"
        + "read             what the meter shows, three digits\n"
        + "measure box      the box on the capacitance meter\n"
        + "measure 3 7      parts 3 and 7 of the drawer, in parallel, on the capacitance meter\n"
        + "solder 51 3 7    solders them in at output 51\n"
        + "rod 51 out 0.3   loosens the magnet rod of output 51, pulls it a little too far, pushes it back to 0.3 mm from its old place, locks it\n"
        + "rod 51 in 0.1    pushes it straight in, and locks it\n"
        + "quit";

    // The filter for tones from 20 Hz up has settled to 0.005 % by then (meters' data in docs).
    private static readonly TimeSpan UntilItStands = TimeSpan.FromSeconds(1);

    private readonly BenchDefinition bench;
    private readonly SimulatedBench simulated;
    private readonly PanelBox box;
    private readonly LevelSampler sampler;
    private readonly Random random;
    private readonly RodGrip grip;

    public FrontPanel(BenchDefinition bench, SimulatedBench simulated, PanelBox box)
    {
        (this.bench, this.simulated, this.box) = (bench, simulated, box);
        (sampler, random, grip) = (new(bench.Meter), new(bench.Seed + 6), new(new(bench.Seed + 8)));
        simulated.Dial(box.Picofarads * 1e-12);
    }

    /// <summary>Does what was typed.</summary>
    /// <returns>What is seen then; none to end.</returns>
    public async Task<string?> DoAsync(string line, CancellationToken cancellationToken)
    {
        var words = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        switch (words)
        {
            case []:
                return "";
            case ["quit"]:
                return null;
            case ["help"]:
                return Help;
            case ["clip", var output] when Output(output) is { } number:
                simulated.Clip(number, withFixture: false);
                return $"clipped {number}";
            case ["clip", var output, "box"] when Output(output) is { } number:
                simulated.Clip(number, withFixture: true);
                return $"clipped {number}, box in";
            case ["off"]:
                simulated.Unclip();
                return "off";
            case ["dial", var value] when TypedCapacitance.Picofarads(value) is { } picofarads:
                return Dial(picofarads);
            case ["read"]:
                return await ReadAsync(cancellationToken);
            case ["measure", "box"]:
                return Measured(box.Picofarads);
            case ["measure", .. var numbers] when Parts(numbers) is { } parts:
                return Measured(parts.Sum(part => part.Picofarads));
            case ["solder", var output, .. var numbers] when Output(output) is { } number && Parts(numbers) is { } parts:
                simulated.Solder(number, parts);
                return $"soldered at {number}";
            case ["rod", var output, "out" or "in", var distance] when Output(output) is { } number && Millimetres(distance) is { } millimetres:
                return MoveRod(number, words[2] == "out" ? millimetres : -millimetres);
            default:
                return $"'{line.Trim()}' is nothing that can be done here; help tells what can";
        }
    }

    private string Dial(double picofarads)
    {
        if (!box.Dial(picofarads)) return "the box cannot be dialled so: its smallest step is 100 pF, its largest total 1111 nF";
        simulated.Dial(box.Picofarads * 1e-12);
        return $"dialled {box.Printed} pF";
    }

    // Tip and wheel are heard when they meet; how far it really went is not seen.
    private string MoveRod(int output, double outward)
    {
        var met = false;
        foreach (var wanted in RodGrip.Wanted(outward)) met |= simulated.PushRod(output, grip.Made(wanted));
        met |= simulated.LockRod(output, grip.LockShift());
        return met ? $"rod {output}: it scrapes at the wheel" : $"rod {output} locked";
    }

    // The eye waits until the digits stand.
    private async Task<string> ReadAsync(CancellationToken cancellationToken)
    {
        var clock = simulated.Clock;
        var then = clock.Now + UntilItStands;
        await clock.WaitUntilAsync(then, cancellationToken);
        var settings = new MeterSettings();
        var volts = simulated.Look(then, view => sampler.Sample(
            view, MeterSettings.RangeFor(view.DetectorVolts / 1.2), MeterSettings.LevelApertureSeconds, settings.FilterHertz));
        return volts is > 0 and < 0.9995 ? $"{Digits(volts * 1e3, 3)} mV" : $"{Digits(volts, 3)} V";
    }

    private string Measured(double picofarads)
    {
        var meter = bench.CapacitanceMeter;
        var shown = (picofarads * (1 + (meter.GainErrorPercent / 100) + (meter.NoisePercentOfReading / 100 * MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1))))
            + meter.LeadPicofarads - meter.OpenCorrectionPicofarads;
        return $"{Digits(shown / 1e3, 4)} nF";
    }

    private static string Digits(double value, int digits)
    {
        if (value <= 0) return "0.00";
        var decimals = Math.Clamp(digits - 1 - (int)Math.Floor(Math.Log10(value)), 0, 4);
        return value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    private int? Output(string word) => Number(word) is { } number && bench.Outputs.Any(output => output.Number == number) ? number : null;

    private PartDefinition[]? Parts(string[] words)
    {
        var numbers = words.Select(Number).ToArray();
        return words.Length > 0 && numbers.All(number => number is { } one && one >= 1 && one <= bench.Parts.Count)
            ? [.. numbers.Select(number => bench.Parts[number!.Value - 1])] : null;
    }

    // A rod is some centimetres long; farther than this no hand is asked to move one.
    private static double? Millimetres(string word) =>
        double.TryParse(word, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var distance) && distance is > 0 and <= 10 ? distance : null;

    private static int? Number(string word) => int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;
}
