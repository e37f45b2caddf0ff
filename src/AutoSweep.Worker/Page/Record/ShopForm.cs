using System.Text.Json;
using AutoSweep.Core.StrictJson;
using AutoSweep.Worker.Files;
using AutoSweep.Worker.Page.Shared;
using AutoSweep.Worker.Reports;

namespace AutoSweep.Worker.Page.Record;

/// <summary>The shop's name and address as typed. What the form has no field for, such as the instruments, stays as the file says it.</summary>
public sealed class ShopForm
{
    private const int LongestLine = 120, LongestNote = 600, MostLines = 8;

    /// <summary>The shop's name.</summary>
    public string Name { get; set; } = "";

    /// <summary>Its address, a line each.</summary>
    public string Address { get; set; } = "";

    /// <summary>Who signs.</summary>
    public string Technician { get; set; } = "";

    /// <summary>The telephone number.</summary>
    public string Phone { get; set; } = "";

    /// <summary>A sentence for the end of the record.</summary>
    public string Note { get; set; } = "";

    /// <summary>A shop that exists only in examples.</summary>
    public bool Invented { get; set; }

    /// <summary>The form of a shop; empty where nothing has been written down.</summary>
    public static ShopForm Of(ShopSettings? shop) => shop is null ? new() : new()
    {
        Name = shop.Name, Address = string.Join('\n', shop.Address), Technician = shop.Technician ?? "", Phone = shop.Phone ?? "",
            Note = shop.Note ?? "",
        Invented = shop.Invented,
    };

    /// <summary>What was typed, on top of what was known before.</summary>
    /// <exception cref="Core.BenchFaultException">A field that cannot be used.</exception>
    public ShopSettings Over(ShopSettings? before) => (before ?? new() { Name = "" }) with
    {
        Name = TypedField.Text(Name, "the shop's name", LongestLine),
        Address = Lines(),
        Technician = TypedField.TextOrNone(Technician, "the technician", LongestLine),
        Phone = TypedField.TextOrNone(Phone, "the telephone number", LongestLine),
        Note = TypedField.TextOrNone(Note.ReplaceLineEndings(" "), "the note", LongestNote),
        Invented = Invented,
    };

    /// <summary>Puts it in the place of an earlier file, whole or not at all; the earlier one stays beside it as <c>.before</c>.</summary>
    /// <param name="path">shop.json.</param>
    /// <returns>What the file says now.</returns>
    /// <exception cref="Core.BenchFaultException">A field that cannot be used, or the folder cannot be written.</exception>
    public ShopSettings Save(string path)
    {
        var shop = Over(Known(path));
        var text = JsonSerializer.Serialize(shop, StrictJsonOptions.Written) + "\n";
        // What the reader would refuse is not written.
        StrictJsonFile.Parse<ShopSettings>(text, ShopSettings.FileName);
        if (File.Exists(path))
            WholeFile.Replace(path + ".before", File.ReadAllText(path));
        WholeFile.Replace(path, text);
        return shop;
    }

    // A file that cannot be read gives nothing to keep; it stays beside the new one.
    private static ShopSettings? Known(string path)
    {
        try
        {
            return File.Exists(path) ? ShopSettings.Read(path) : null;
        }
        catch (Core.BenchFaultException)
        {
            return null;
        }
    }

    private string[] Lines()
    {
        string[] lines = [.. Address.ReplaceLineEndings("\n").Split('\n')
            .Select(line => TypedField.TextOrNone(line, "a line of the address", LongestLine)).OfType<string>()];
        return lines.Length <= MostLines ? lines : throw new Core.BenchFaultException(
            Core.BenchFault.BadFile, $"an address of {lines.Length} lines", $"at most {MostLines} lines", "draw some of them together");
    }
}
