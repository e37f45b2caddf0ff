using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using System.Text.Json.Serialization;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Generator;

/// <summary>One kind of tone generator: its gear trains, its outputs and the filters that they pass.</summary>
/// <remarks>Data, not code: read from a strict JSON file by <see cref="GeneratorProfileFile"/>. Immutable.</remarks>
public sealed record GeneratorProfile
{
    /// <summary>Where an editor finds the schema; of no meaning to the program.</summary>
    [JsonPropertyName("$schema"), Description("Where an editor finds this schema; of no meaning to the program.")]
    public string? Schema { get; init; }

    /// <summary>Version of the file format; 1 is the only one.</summary>
    [Description("Version of the file format."), Range(1, 1)]
    public required int Format { get; init; }

    /// <summary>The profile's name as a technician would say it.</summary>
    [Description("The profile's name as a technician would say it.")]
    public required string Name { get; init; }

    /// <summary>Where the figures come from, and which of them are not confirmed.</summary>
    [Description("Where the figures come from.")]
    public required string Source { get; init; }

    /// <summary>Whether the generator exists only in examples and demonstrations.</summary>
    [Description("True where the generator exists only in examples and demonstrations.")]
    public bool Invented { get; init; }

    /// <summary>What in this profile nobody has confirmed, a sentence each; shown to the person who chooses the profile.</summary>
    [Description("What in this profile nobody has confirmed, a sentence each; shown when the profile is chosen.")]
    public IReadOnlyList<string> NotConfirmed { get; init; } = [];

    /// <summary>The mains frequency for which the gearing was cut, in hertz: 50 or 60, or 45 to 65 for a converter.</summary>
    [Description("The mains frequency for which the gearing was cut, in hertz: 50 or 60."), Range(45.0, 65.0)]
    public required double MainsHertz { get; init; }

    /// <summary>Turns of the main shaft a second at that mains frequency.</summary>
    [Description("Turns of the main shaft a second at that mains frequency."), Range(1.0, 100.0)]
    public required double ShaftTurnsPerSecond { get; init; }

    /// <summary>The gear trains by name; an output names the one that drives its wheel.</summary>
    [Description("The gear trains by name; an output names the one that drives its wheel.")]
    public required IReadOnlyDictionary<string, GearTrain> GearTrains { get; init; }

    /// <summary>Published differences in the gearing, by name; see <see cref="WithVariant"/>.</summary>
    [Description("Published differences in the gearing by name, chosen as profile#variant.")]
    public IReadOnlyDictionary<string, GeneratorVariant> Variants { get; init; } = new Dictionary<string, GeneratorVariant>();

    /// <summary>The outputs in ascending number.</summary>
    [Description("The outputs in ascending number.")]
    public required IReadOnlyList<GeneratorOutput> Outputs { get; init; }

    /// <summary>The outputs that pass a filter with a capacitor, and so take part in a sweep.</summary>
    [JsonIgnore]
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

    /// <summary>The same generator with the gear trains of one of its variants.</summary>
    /// <param name="variant">A name of <see cref="Variants"/>.</param>
    /// <exception cref="KeyNotFoundException">There is no such variant.</exception>
    public GeneratorProfile WithVariant(string variant)
    {
        var trains = new Dictionary<string, GearTrain>(GearTrains);
        foreach (var (name, train) in Variants[variant].GearTrains)
            trains[name] = train;
        return this with { Name = $"{Name}, variant {variant}", GearTrains = trains };
    }
}
