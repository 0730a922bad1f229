using System.Net;
using System.Net.Http.Headers;
using System.Text;
using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Maintenance.Pictures;
using PlantWatch.Server.Api;
using SkiaSharp;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>Pictures of jobs through the public interface, made by a real encoder; and what somebody with bad intent would send.</summary>
public sealed class PictureTests
{
    private const string Where = "GPS 51.5007 N 0.1246 W";

    private static readonly byte[] Script = "<script>alert(document.domain)</script>"u8.ToArray();

    [Theory]
    [InlineData(SKEncodedImageFormat.Jpeg, "image/jpeg")]
    [InlineData(SKEncodedImageFormat.Png, "image/png")]
    [InlineData(SKEncodedImageFormat.Webp, "image/webp")]
    public async Task A_picture_stands_with_its_job_and_says_nothing_of_where_it_was_taken(SKEncodedImageFormat format, string type)
    {
        var server = await WholeServer.StartAsync();
        var image = Encoded(format);
        var taken = await WholeServer.ReadAsync<PictureView>(await SendAsync(server, [.. WithPlace(image, format), .. Script]));
        Assert.Equal((64, 48), (taken.Width, taken.Height));
        // The same picture is the same name, however much was written beside it.
        Assert.Equal(taken.Hash, (await WholeServer.ReadAsync<PictureView>(await SendAsync(server, image))).Hash);

        var (id, asset) = (Guid.CreateVersion7(), server.Host.Circuits.First().State.Plan.Pumps[0].Id);
        var request = new JobRequest(asset, "Leaks at the head", null, JobState.Open, null, "R. Castellan") { Pictures = [taken.Hash] };
        Assert.Equal([taken.Hash], (await WholeServer.ReadAsync<JobView>(await server.PutAsync($"/api/v1/jobs/{id}", request))).Pictures);
        server = await server.RestartAsync();
        await using (server)
        {
            Assert.Equal([taken.Hash], (await server.GetAsync<List<JobView>>("/api/v1/jobs")).Single().Pictures);
            using var shown = await server.Http.GetAsync(new Uri($"/api/v1/pictures/{taken.Hash}", UriKind.Relative));
            var bytes = await shown.Content.ReadAsByteArrayAsync();
            Assert.Equal(taken.Hash, Picture.HashOf(bytes));
            Assert.Equal((type, "nosniff", "default-src 'none'; sandbox"), (shown.Content.Headers.ContentType!.MediaType, Header(shown, "X-Content-Type-Options"), Header(shown, "Content-Security-Policy")));
            Assert.DoesNotContain(Where, Encoding.Latin1.GetString(bytes), StringComparison.Ordinal);
            Assert.DoesNotContain("script", Encoding.Latin1.GetString(bytes), StringComparison.Ordinal);
            using var before = SKBitmap.Decode(image);
            using var after = SKBitmap.Decode(bytes);
            Assert.Equal(before.Bytes, after.Bytes);
        }
    }

    public static TheoryData<string, byte[], HttpStatusCode, string> Hostile => new()
    {
        { "a page that calls itself a picture", [.. "<html><body>"u8, .. Script], HttpStatusCode.BadRequest, "picture.no_picture" },
        { "a drawing that can hold scripts", "<svg xmlns=\"http://www.w3.org/2000/svg\" onload=\"alert(1)\"/>"u8.ToArray(), HttpStatusCode.BadRequest, "picture.no_picture" },
        { "another kind of picture", [.. "GIF89a"u8, 1, 0, 1, 0, 0, 0, 0, 0x3B], HttpStatusCode.BadRequest, "picture.no_picture" },
        { "nothing", [], HttpStatusCode.BadRequest, "picture.no_picture" },
        { "the head of a picture and a page behind it", [0xFF, 0xD8, 0xFF, 0xE0, 0, 4, 1, 2, .. Script], HttpStatusCode.BadRequest, "picture.broken" },
        { "half a picture", Encoded(SKEncodedImageFormat.Jpeg)[..400], HttpStatusCode.BadRequest, "picture.broken" },
        { "a length that points beyond the end", [0xFF, 0xD8, 0xFF, 0xDB, 0xFF, 0xFF, 0], HttpStatusCode.BadRequest, "picture.broken" },
        { "a spoiled chunk", Spoiled(Encoded(SKEncodedImageFormat.Png), 20), HttpStatusCode.BadRequest, "picture.broken" },
        { "a picture that unfolds to gigabytes", Bomb(60_000, 60_000), HttpStatusCode.BadRequest, "picture.too_many_pixels" },
        { "a picture that moves", [.. "RIFF"u8, 22, 0, 0, 0, .. "WEBPVP8X"u8, 10, 0, 0, 0, 2, 0, 0, 0, 9, 0, 0, 9, 0, 0], HttpStatusCode.BadRequest, "picture.animated" },
        { "a length of the whole that is a lie", [.. "RIFF"u8, 255, 255, 255, 127, .. "WEBPVP8 "u8, 0, 0, 0, 0], HttpStatusCode.BadRequest, "picture.broken" },
        { "more than is taken", [0xFF, 0xD8, 0xFF, .. new byte[Picture.MostBytes]], HttpStatusCode.RequestEntityTooLarge, "picture.too_large" },
    };

    [Theory, MemberData(nameof(Hostile))]
    public async Task What_is_no_sound_picture_is_refused_by_name(string what, byte[] sent, HttpStatusCode status, string code)
    {
        await using var server = await WholeServer.StartAsync();
        using var answer = await SendAsync(server, sent);
        Assert.True(status == answer.StatusCode, what);
        Assert.Contains(code, await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await server.Http.GetAsync(new Uri($"/api/v1/pictures/{Picture.HashOf(sent)}", UriKind.Relative))).StatusCode);
    }

    [Fact]
    public async Task A_length_that_is_not_told_is_held_to_the_limit_as_well()
    {
        await using var server = await WholeServer.StartAsync();
        using var content = new StreamContent(new MemoryStream(new byte[Picture.MostBytes + 1]));
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/v1/pictures") { Content = content };
        request.Headers.TransferEncodingChunked = true;
        using var answer = await server.Http.SendAsync(request);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
    }

    [Theory]
    [InlineData("..%2f..%2fplant.yaml")]
    [InlineData("0123")]
    [InlineData("ZZ23456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef")]
    public async Task A_name_that_is_no_hash_finds_nothing_and_a_job_cannot_name_what_is_not_there(string name)
    {
        await using var server = await WholeServer.StartAsync();
        Assert.Equal(HttpStatusCode.NotFound, (await server.Http.GetAsync(new Uri($"/api/v1/pictures/{name}", UriKind.Relative))).StatusCode);
        var asset = server.Host.Circuits.First().State.Plan.Pumps[0].Id;
        var job = new JobRequest(asset, "Leaks", null, JobState.Open, null, "R. Castellan") { Pictures = [name] };
        using var answer = await server.PutAsync($"/api/v1/jobs/{Guid.CreateVersion7()}", job);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Empty(await server.GetAsync<List<JobView>>("/api/v1/jobs"));
    }

    private static async Task<HttpResponseMessage> SendAsync(WholeServer server, byte[] bytes)
    {
        using var content = new ByteArrayContent(bytes);
        // Whatever it calls itself.
        content.Headers.ContentType = new MediaTypeHeaderValue("image/png");
        return await server.Http.PostAsync(new Uri("/api/v1/pictures", UriKind.Relative), content);
    }

    private static string Header(HttpResponseMessage answer, string name) => string.Join(' ', answer.Headers.TryGetValues(name, out var own) ? own : answer.Content.Headers.GetValues(name));

    private static byte[] Encoded(SKEncodedImageFormat format)
    {
        using var bitmap = new SKBitmap(64, 48);
        for (var x = 0; x < 64; x++)
        for (var y = 0; y < 48; y++) bitmap.SetPixel(x, y, new SKColor((byte)(4 * x), (byte)(5 * y), (byte)(x * y)));
        using var data = bitmap.Encode(format, 90);
        return data.ToArray();
    }

    // As phones do it: an EXIF segment after the first marker, a text chunk before the data, a chunk behind the image.
    private static byte[] WithPlace(byte[] image, SKEncodedImageFormat format)
    {
        var place = Encoding.ASCII.GetBytes("Exif\0\0" + Where);
        switch (format)
        {
            case SKEncodedImageFormat.Jpeg:
                return [0xFF, 0xD8, 0xFF, 0xE1, 0, (byte)(place.Length + 2), .. place, 0xFF, 0xFE, 0, (byte)(Where.Length + 2), .. Encoding.ASCII.GetBytes(Where), .. image[2..]];
            case SKEncodedImageFormat.Png:
                return [.. image[..33], .. Chunk("tEXt", place), .. image[33..]];
            default:
                var padded = place.Length % 2 == 0 ? place : [.. place, 0];
                var whole = (byte[])[.. image, .. "EXIF"u8, .. BitConverter.GetBytes(place.Length), .. padded];
                BitConverter.GetBytes(whole.Length - 8).CopyTo(whole, 4);
                return whole;
        }
    }

    private static byte[] Chunk(string type, byte[] data)
    {
        var body = (byte[])[.. Encoding.ASCII.GetBytes(type), .. data];
        return [.. BitConverter.GetBytes(data.Length).Reverse(), .. body, .. BitConverter.GetBytes(Crc(body)).Reverse()];
    }

    // CRC-32 as ISO/IEC 15948, annex D, has it, bit by bit.
    private static uint Crc(byte[] bytes) => ~bytes.Aggregate(uint.MaxValue, (crc, b) => Enumerable.Range(0, 8).Aggregate(crc ^ b, (c, _) => (c & 1) == 1 ? 0xEDB88320u ^ (c >> 1) : c >> 1));

    private static byte[] Bomb(int width, int height) =>
        [.. Encoded(SKEncodedImageFormat.Png)[..8], .. Chunk("IHDR", [.. BitConverter.GetBytes(width).Reverse(), .. BitConverter.GetBytes(height).Reverse(), 8, 2, 0, 0, 0]), .. Chunk("IDAT", [0]), .. Chunk("IEND", [])];

    private static byte[] Spoiled(byte[] image, int at)
    {
        image[at] ^= 0x40;
        return image;
    }
}
