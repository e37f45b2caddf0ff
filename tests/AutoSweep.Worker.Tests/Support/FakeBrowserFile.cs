using System.Text;
using Microsoft.AspNetCore.Components.Forms;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>A file as a browser offers it.</summary>
internal sealed class FakeBrowserFile(string name, byte[] content, long? claimedSize = null) : IBrowserFile
{
    public FakeBrowserFile(string name, string text)
        : this(name, Encoding.UTF8.GetBytes(text))
    {
    }

    public string Name => name;

    public DateTimeOffset LastModified => default;

    public long Size => claimedSize ?? content.Length;

    public string ContentType => "";

    // As the framework's own: what is larger than allowed is refused before a byte is read.
    public Stream OpenReadStream(long maxAllowedSize, CancellationToken cancellationToken) =>
        Size > maxAllowedSize ? throw new IOException("larger than allowed") : new MemoryStream(content);
}
