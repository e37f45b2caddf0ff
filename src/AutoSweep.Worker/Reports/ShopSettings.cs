using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using System.Text.Json.Serialization;
using AutoSweep.Core.StrictJson;

namespace AutoSweep.Worker.Reports;

/// <summary>Who did the work, as the record's cover says it: shop.json.</summary>
public sealed record ShopSettings
{
    /// <summary>The file's name in the data folder.</summary>
    public const string FileName = "shop.json";

    /// <summary>Where the schema is, for editors; not read.</summary>
    [JsonPropertyName("$schema"), Description("Where an editor finds the schema; not read.")]
    public string? Schema { get; init; }

    /// <summary>Version of the file format; 1 is the only one.</summary>
    [Description("Version of the file format; 1 is the only one."), Range(1, 1)]
    public int Format { get; init; } = 1;

    /// <summary>The shop's name.</summary>
    [Description("The shop's name.")]
    public required string Name { get; init; }

    /// <summary>True for a shop that exists only in examples; the record says so on its cover.</summary>
    [Description("True for a shop that exists only in examples; the record says so on its cover.")]
    public bool Invented { get; init; }

    /// <summary>The lines of its address.</summary>
    [Description("The lines of its address.")]
    public IReadOnlyList<string> Address { get; init; } = [];

    /// <summary>Who signs.</summary>
    [Description("The technician who signs.")]
    public string? Technician { get; init; }

    /// <summary>The telephone number.</summary>
    [Description("The telephone number.")]
    public string? Phone { get; init; }

    /// <summary>A sentence for the end of the record, such as the terms of warranty.</summary>
    [Description("A sentence for the end of the record, such as the terms of warranty.")]
    public string? Note { get; init; }

    /// <summary>The shop's instruments, for what they do not tell themselves: when they were calibrated.</summary>
    [Description("The shop's instruments, for what they do not tell themselves: when they were calibrated.")]
    public IReadOnlyList<ShopInstrument> Instruments { get; init; } = [];

    /// <summary>The schema that an editor uses for such a file.</summary>
    public static string SchemaText => JsonFieldSchema.Of<ShopSettings>("The shop, for the record's cover");

    /// <summary>Reads the settings.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="Core.BenchFaultException">Missing or not in the format; names field and line.</exception>
    public static ShopSettings Read(string path) => StrictJsonFile.Read<ShopSettings>(path).Value;
}
