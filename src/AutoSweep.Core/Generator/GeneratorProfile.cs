using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Generator;

/// <summary>One kind of tone generator: its gear trains, its outputs and the filters that they pass.</summary>
/// <remarks>Data, not code: read from a strict JSON file by <see cref="GeneratorProfileFile"/>. Immutable.</remarks>
public sealed record GeneratorProfile
{
    /// <summary>Version of the file format; 1 is the only one.</summary>
    public required int Format { get; init; }

    /// <summary>The profile's name as a technician would say it.</summary>
    public required string Name { get; init; }

    /// <summary>Where the figures come from, and which of them are not confirmed.</summary>
    public required string Source { get; init; }

    /// <summary>Whether the generator exists only in examples and demonstrations.</summary>
    public bool Invented { get; init; }

    /// <summary>The mains frequency for which the gearing was cut, in hertz: 50 or 60.</summary>
    public required double MainsHertz { get; init; }

    /// <summary>Turns of the main shaft a second at that mains frequency.</summary>
    public required double ShaftTurnsPerSecond { get; init; }

    /// <summary>The gear trains by name; an output names the one that drives its wheel.</summary>
    public required IReadOnlyDictionary<string, GearTrain> GearTrains { get; init; }

    /// <summary>The outputs in ascending number.</summary>
    public required IReadOnlyList<GeneratorOutput> Outputs { get; init; }

    /// <summary>The outputs that pass a filter with a capacitor, and so take part in a sweep.</summary>
    public IEnumerable<GeneratorOutput> FilteredOutputs => Outputs.Where(output => output.Capacitor is not null);

    /// <summary>The tone of an output when the motor runs in step with the mains.</summary>
    /// <param name="output">An output of this profile.</param>
    /// <param name="mains">The mains frequency now; the tone follows it in proportion.</param>
    public Frequency ToneOf(GeneratorOutput output, Frequency mains)
    {
        var train = GearTrains[output.GearTrain];
        return new(mains.Hertz / MainsHertz * ShaftTurnsPerSecond * train.DrivingTeeth / train.DrivenTeeth * output.WheelTeeth);
    }

    /// <summary>The tone of an output at the mains frequency for which the gearing was cut.</summary>
    public Frequency ToneOf(GeneratorOutput output) => ToneOf(output, new(MainsHertz));
}
