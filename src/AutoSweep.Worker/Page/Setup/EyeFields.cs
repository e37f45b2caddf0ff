using AutoSweep.Worker.ByHand;
using AutoSweep.Worker.Page.Shared;

namespace AutoSweep.Worker.Page.Setup;

/// <summary>A meter that is read by eye, as a person describes it.</summary>
public sealed class EyeFields
{
    /// <summary>The meter in words.</summary>
    public string Name { get; set; } = "meter read by eye";

    /// <summary>The unit of a bare number.</summary>
    public EyeUnit Unit { get; set; }

    /// <summary>What a reading wanders by, in per cent.</summary>
    public string Flicker { get; set; } = "0.5";

    /// <summary>The meter's limit of error in per cent; empty where it is not known.</summary>
    public string Accuracy { get; set; } = "";

    /// <summary>The fields of a meter.</summary>
    public static EyeFields Of(EyeReading eye) => new()
    {
        Name = eye.Name, Unit = eye.Unit, Flicker = TypedField.Shown(eye.FlickerPercent), Accuracy = TypedField.Shown(eye.AccuracyPercent),
    };

    /// <summary>The meter.</summary>
    /// <exception cref="Core.BenchFaultException">A field cannot be understood.</exception>
    public EyeReading Read() => new()
    {
        Name = TypedField.TextOrNone(Name, "Meter in words") ?? "meter read by eye",
        Unit = Unit,
        FlickerPercent = TypedField.NumberOrNone(Flicker, "Flicker", 0.01, 10) ?? 0.5,
        AccuracyPercent = TypedField.NumberOrNone(Accuracy, "Meter's limit of error", 0.001, 50),
    };
}
