using System.Text;
using AutoSweep.Core;
using Microsoft.AspNetCore.Components.Forms;

namespace AutoSweep.Worker.Page.Shared;

/// <summary>A text file that somebody sends through the page. Its name is shown and never used as a path.</summary>
/// <param name="Name">What the sender's computer calls it; for messages only.</param>
/// <param name="Text">What it says, read as UTF-8.</param>
public sealed record UploadedFile(string Name, string Text)
{
    /// <summary>The most that is taken, in bytes: 1 MiB, a hundred times what the longest level curve or generator profile needs.</summary>
    public const long MostBytes = 1024 * 1024;

    private const int LongestName = 80;

    /// <summary>Takes a file in.</summary>
    /// <param name="file">What the browser offers.</param>
    /// <param name="kind">What it should be, in words, for the message.</param>
    /// <param name="cancellationToken">Gives up.</param>
    /// <param name="mostBytes">The most that is taken, in bytes.</param>
    /// <exception cref="BenchFaultException">Too large, empty, not UTF-8, or broken off on its way.</exception>
    public static async Task<UploadedFile> TakeAsync(
        IBrowserFile file, string kind, CancellationToken cancellationToken, long mostBytes = MostBytes)
    {
        ArgumentNullException.ThrowIfNull(file);
        var (name, wanted) = (Shown(file.Name), FormattableString.Invariant($"{kind} of {mostBytes / 1024} KiB at most"));
        if (file.Size == 0 || file.Size > mostBytes)
            throw Refuse($"{name}: {file.Size} bytes", wanted, null);
        try
        {
            using var text = new MemoryStream();
            await using var sent = file.OpenReadStream(mostBytes, cancellationToken);
            await sent.CopyToAsync(text, cancellationToken);
            return new(name, new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(text.ToArray()).TrimStart('\uFEFF'));
        }
        catch (DecoderFallbackException fault)
        {
            throw Refuse($"{name} is not a text in UTF-8", $"{kind}, saved as UTF-8", fault);
        }
        catch (IOException fault)
        {
            throw Refuse($"{name}: {fault.Message}", wanted, fault);
        }
    }

    // Only the last part, without signs that could dress it up.
    private static string Shown(string sent)
    {
        var last = sent.Split('/', '\\')[^1];
        var plain = string.Concat(last.Where(letter => !char.IsControl(letter)
            && char.GetUnicodeCategory(letter) != System.Globalization.UnicodeCategory.Format));
        return plain.Length is 0 ? "a file without a name" : plain.Length > LongestName ? plain[..LongestName] : plain;
    }

    private static BenchFaultException Refuse(string found, string expected, Exception? inner) =>
        new(BenchFault.BadFile, found, expected, "choose another file, or mend this one; nothing was taken in", inner);
}
