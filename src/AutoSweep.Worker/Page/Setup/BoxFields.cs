using AutoSweep.Core.Decades;
using AutoSweep.Worker.Page.Shared;

namespace AutoSweep.Worker.Page.Setup;

/// <summary>A decade box that is dialled by hand, as a person types it.</summary>
public sealed class BoxFields
{
    /// <summary>The most dials that a box may have.</summary>
    public const int MostDials = 7;

    private static readonly string[] UsualSteps = ["100n", "10n", "1n", "100p"];

    /// <summary>What it is called.</summary>
    public string Name { get; set; } = "decade box";

    /// <summary>Picofarads of box and leads with every dial at 0.</summary>
    public string Stray { get; set; } = "50";

    /// <summary>The maker's limit of error in per cent.</summary>
    public string Tolerance { get; set; } = "1";

    /// <summary>How far measured positions may be off against each other, in per cent.</summary>
    public string MeasuredPercent { get; set; } = "0.1";

    /// <summary>The dials, the largest first.</summary>
    public List<DialFields> Dials { get; } = [];

    /// <summary>A box as many shops have it: four dials, 100 nF to 100 pF a step (common practice, no source).</summary>
    public static BoxFields Usual()
    {
        var box = new BoxFields();
        box.Dials.AddRange(UsualSteps.Select(step => new DialFields { Step = step }));
        return box;
    }

    /// <summary>The fields of a box.</summary>
    public static BoxFields Of(DecadeBox box)
    {
        var fields = new BoxFields
        {
            Name = box.Name,
            Stray = TypedField.Shown(box.StrayPicofarads),
            Tolerance = TypedField.Shown(box.TolerancePercent),
            MeasuredPercent = TypedField.Shown(box.MeasuredPercent),
        };
        fields.Dials.AddRange(box.Decades.Select(DialFields.Of));
        return fields;
    }

    /// <summary>The box.</summary>
    /// <exception cref="Core.BenchFaultException">A field cannot be understood, or there is no such box.</exception>
    public DecadeBox Read()
    {
        var box = new DecadeBox
        {
            Name = TypedField.TextOrNone(Name, "Name of the box") ?? "decade box",
            StrayPicofarads = TypedField.NumberOrNone(Stray, "Stray", 0, 10_000) ?? 50,
            TolerancePercent = TypedField.NumberOrNone(Tolerance, "Limit of error", 0.001, 20) ?? 1,
            MeasuredPercent = TypedField.NumberOrNone(MeasuredPercent, "Measured to", 0.001, 20) ?? 0.1,
            Decades = [.. Dials.Select((dial, index) => dial.Read(index + 1))],
        };
        DecadeBoxChecks.Check(box, "the fields of the box");
        return box;
    }
}
