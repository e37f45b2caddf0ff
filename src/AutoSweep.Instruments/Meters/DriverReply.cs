using System.ComponentModel;
using System.ComponentModel.DataAnnotations;

namespace AutoSweep.Instruments.Meters;

/// <summary>How a family writes its readings.</summary>
public sealed record DriverReply
{
    /// <summary>Which of the reply's fields, with commas between, is the number; the first is 1.</summary>
    /// <value>Default 1.</value>
    [Description("Which of the reply's fields, with commas between, is the number; the first is 1. Default 1."), Range(1, 20)]
    public int Field { get; init; } = 1;

    /// <summary>Fields that mean overload, beside SCPI's 9.9E37.</summary>
    [Description("Fields that mean overload, beside SCPI's 9.9E37.")]
    public IReadOnlyList<string> Overloads { get; init; } = [];
}
