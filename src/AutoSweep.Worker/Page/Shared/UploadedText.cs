using System.Text;
using AutoSweep.Core;
using Microsoft.AspNetCore.Components.Forms;

namespace AutoSweep.Worker.Page.Shared;

/// <summary>The text of a file that a person uploads: limited in size, and text.</summary>
public static class UploadedText
{
    /// <summary>Reads it.</summary>
    /// <param name="file">The file.</param>
    /// <param name="mostBytes">How large it may be.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <exception cref="BenchFaultException">It is larger, or no text in UTF-8.</exception>
    public static async Task<string> ReadAsync(IBrowserFile file, long mostBytes, CancellationToken cancellationToken)
    {
        if (file.Size > mostBytes)
        {
            throw new BenchFaultException(BenchFault.BadFile, FormattableString.Invariant($"a file of {file.Size} bytes"),
                FormattableString.Invariant($"at most {mostBytes} bytes"), "choose the right file, or divide it");
        }

        await using var stream = file.OpenReadStream(mostBytes, cancellationToken);
        using var bytes = new MemoryStream();
        await stream.CopyToAsync(bytes, cancellationToken);
        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes.ToArray());
        }
        catch (ArgumentException fault)
        {
            throw new BenchFaultException(BenchFault.BadFile, "a file that is no text in UTF-8", "a text file", "save it as UTF-8 text", fault);
        }
    }
}
