using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Stock;

/// <summary>One capacitor of the shop's stock, with an id of its own that is written on it or on its bag.</summary>
public sealed record Part
{
    /// <summary>The id, unique in the ledger and never given twice.</summary>
    public required string Id { get; init; }

    /// <summary>The latest measurement.</summary>
    public required PartMeasurement Measured { get; init; }

    /// <summary>The printed value in picofarads, where it is known.</summary>
    public long? NominalPicofarads { get; init; }

    /// <summary>The printed tolerance letter, see <see cref="ToleranceLetters"/>; none where it is not known.</summary>
    public string? ToleranceLetter { get; init; }

    /// <summary>The dielectric in the shop's words, such as <c>polypropylene</c>.</summary>
    public string? Dielectric { get; init; }

    /// <summary>The rated voltage in volts; none where it is not known.</summary>
    public double? RatedVolts { get; init; }

    /// <summary>The bin in which it lies; none where bins go by <see cref="BinPlan"/>.</summary>
    public string? Bin { get; init; }

    /// <summary>Columns of an imported file that the ledger has no name for, kept as they came.</summary>
    public IReadOnlyDictionary<string, string>? OtherColumns { get; init; }

    /// <summary>What has become of it.</summary>
    public PartStatus Status { get; init; }

    /// <summary>Where it is reserved or fitted; none otherwise.</summary>
    public PartPlace? Place { get; init; }

    /// <summary>The measured capacitance.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public Capacitance Capacitance => new(Measured.Picofarads);
}
