using System.ComponentModel;
using System.ComponentModel.DataAnnotations;

namespace AutoSweep.Instruments.Meters;

/// <summary>How a family writes a reading of a capacitance: fields with commas between, the first is 1.</summary>
public sealed record DriverCapacitanceReply
{
    /// <summary>The field with the parallel capacitance in farads.</summary>
    [Description("The field with the parallel capacitance in farads; the first is 1."), Range(1, 20)]
    public required int CapacitanceField { get; init; }

    /// <summary>What stands before the capacitance in its field.</summary>
    /// <value>Default null: nothing. Where it is set and not there, the reading is another quantity, and invalid.</value>
    [Description("What stands before the capacitance in its field, such as C=. Default null: nothing. Where it is set and not there, the reading is "
        + "another quantity, and invalid.")]
    public string? CapacitancePrefix { get; init; }

    /// <summary>The field with the dissipation D.</summary>
    /// <value>Default null: the meter gives none.</value>
    [Description("The field with the dissipation D. Default null: the meter gives none."), Range(1, 20)]
    public int? DissipationField { get; init; }

    /// <summary>What stands before the dissipation in its field.</summary>
    /// <value>Default null: nothing.</value>
    [Description("What stands before the dissipation in its field, such as D=. Default null: nothing.")]
    public string? DissipationPrefix { get; init; }

    /// <summary>The field with the status.</summary>
    /// <value>Default null: the meter gives none.</value>
    [Description("The field with the status. Default null: the meter gives none."), Range(1, 20)]
    public int? StatusField { get; init; }

    /// <summary>The status of a good reading, as whole numbers.</summary>
    [Description("The status of a good reading, as whole numbers.")]
    public IReadOnlyList<int> Good { get; init; } = [0];

    /// <summary>The status of an overload.</summary>
    [Description("The status of an overload.")]
    public IReadOnlyList<int> Overload { get; init; } = [];

    /// <summary>The status of clips that touch nothing.</summary>
    [Description("The status of clips that touch nothing.")]
    public IReadOnlyList<int> NoContact { get; init; } = [];

    /// <summary>The capacitance as the meter wrote it, without its prefix.</summary>
    /// <param name="fields">The reply's fields.</param>
    /// <returns>Null where the reply has none.</returns>
    internal string? CapacitanceIn(string[] fields) => Without(CapacitancePrefix, fields.ElementAtOrDefault(CapacitanceField - 1));

    /// <summary>The dissipation as the meter wrote it, without its prefix.</summary>
    /// <param name="fields">The reply's fields.</param>
    /// <returns>Null where the reply has none, or the meter gives none.</returns>
    internal string? DissipationIn(string[] fields) =>
        DissipationField is { } field ? Without(DissipationPrefix, fields.ElementAtOrDefault(field - 1)) : null;

    private static string? Without(string? prefix, string? field) => prefix is null || field is null ? field
        : field.StartsWith(prefix, StringComparison.OrdinalIgnoreCase) ? field[prefix.Length..]
        : null;
}
