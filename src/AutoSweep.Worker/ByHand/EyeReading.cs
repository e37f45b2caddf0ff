using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using System.Text.Json.Serialization;

namespace AutoSweep.Worker.ByHand;

/// <summary>How a meter is read by eye; the part <c>eye</c> of bench.json.</summary>
public sealed record EyeReading
{
    /// <summary>The unit of a bare number.</summary>
    /// <value>Default millivolts.</value>
    [Description("The unit of a number that is typed without one: volts, millivolts or microvolts; millivolts when left out.")]
    public EyeUnit Unit { get; init; } = EyeUnit.Millivolts;

    /// <summary>What a reading wanders by under the eye, in per cent, one standard deviation.</summary>
    /// <value>Default 0.5: a last digit that flickers while the wheel turns (common practice, no source).</value>
    [Description("What a reading wanders by under the eye, in per cent (one standard deviation); 0.5 when left out."), Range(0.01, 10)]
    public double FlickerPercent { get; init; } = 0.5;

    /// <summary>The meter's limit of error for an absolute level, in per cent; none where it is not known.</summary>
    [Description("The meter's limit of error for an absolute level, in per cent of reading; left out where it is not known."), Range(0.001, 50)]
    public double? AccuracyPercent { get; init; }

    /// <summary>The meter in words, for the record.</summary>
    [Description("The meter in words, for the record.")]
    public string Name { get; init; } = "meter read by eye";

    /// <summary>The unit in volts.</summary>
    [JsonIgnore]
    public double UnitVolts => Unit switch { EyeUnit.Volts => 1, EyeUnit.Microvolts => 1e-6, _ => 1e-3 };

    /// <summary>The unit as it is written.</summary>
    [JsonIgnore]
    public string UnitName => Unit switch { EyeUnit.Volts => "V", EyeUnit.Microvolts => "uV", _ => "mV" };
}
