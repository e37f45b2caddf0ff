using System.ComponentModel;

namespace AutoSweep.Worker.Reports;

/// <summary>What a shop knows of one of its instruments.</summary>
public sealed record ShopInstrument
{
    /// <summary>A part of its identity that no other instrument has: its serial number.</summary>
    [Description("A part of its *IDN? answer that no other instrument has, such as the serial number.")]
    public required string Identity { get; init; }

    /// <summary>The day of its calibration.</summary>
    [Description("The day of its calibration, as 2026-03-01.")]
    public DateOnly? Calibrated { get; init; }

    /// <summary>Who calibrated it, and the certificate.</summary>
    [Description("Who calibrated it, and the certificate.")]
    public string? By { get; init; }

    /// <summary>Its accuracy where the record uses it, in the words of its data sheet.</summary>
    [Description("Its accuracy where it is used, in the words of its data sheet.")]
    public string? Accuracy { get; init; }
}
