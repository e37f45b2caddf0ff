using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using AutoSweep.Instruments.Scpi;

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

    /// <summary>From which size on a number means overload, for families whose sentinel is below SCPI's or differs from model to model.</summary>
    /// <value>Default null: SCPI's 9.9E37 alone.</value>
    [Description("From which size on a number means overload, in the reading's unit, for families whose sentinel is below SCPI's or differs from "
        + "model to model. Default null: SCPI's 9.9E37 alone."), Range(1e-3, 1e37)]
    public double? OverloadFrom { get; init; }

    /// <summary>Reads a field that should be one number.</summary>
    /// <param name="field">The field, without a prefix.</param>
    public MeterReading Read(string field)
    {
        var reading = ScpiNumber.Read(field, Overloads);
        return reading.Kind == MeterReadingKind.Value && Math.Abs(reading.Value) >= OverloadFrom
            ? new(MeterReadingKind.Overload, double.NaN, field)
            : reading;
    }
}
