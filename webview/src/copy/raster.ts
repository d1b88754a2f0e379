/** A drawing as PNG, `factor` pixels for each of its own. Text is drawn in the fonts the drawing names. */
export async function rasterized(svg: string, width: number, height: number, factor: number): Promise<Blob> {
  const url = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    const image = new Image(width, height);
    await new Promise<void>((resolve, reject) => {
      image.onload = () => resolve();
      image.onerror = () => reject(new Error('the drawing could not be read'));
      image.src = url;
    });
    const canvas = document.createElement('canvas');
    canvas.width = Math.round(width * factor);
    canvas.height = Math.round(height * factor);
    canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
    return await new Promise<Blob>((resolve, reject) => {
      canvas.toBlob((blob) => (blob === null ? reject(new Error('no picture was made')) : resolve(blob)), 'image/png');
    });
  } finally {
    URL.revokeObjectURL(url);
  }
}
