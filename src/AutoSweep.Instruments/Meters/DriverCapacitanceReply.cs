using System.ComponentModel;
using System.ComponentModel.DataAnnotations;

namespace AutoSweep.Instruments.Meters;

/// <summary>How a family writes a reading of a capacitance: fields with commas between, the first is 1.</summary>
public sealed record DriverCapacitanceReply
{
    /// <summary>The field with the parallel capacitance in farads.</summary>
    [Description("The field with the parallel capacitance in farads; the first is 1."), Range(1, 20)]
    public required int CapacitanceField { get; init; }

    /// <summary>The field with the dissipation D.</summary>
    /// <value>Default null: the meter gives none.</value>
    [Description("The field with the dissipation D. Default null: the meter gives none."), Range(1, 20)]
    public int? DissipationField { get; init; }

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
}
